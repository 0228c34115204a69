// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/** Long calculations on a thread of their own: neither a key nor the file waits for them, and leaving the program neither. */
public final class Calculations implements AutoCloseable {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(Calculations::thread);
    private volatile Runnable wake = () -> {};
    private CompletableFuture<?> last = CompletableFuture.completedFuture(true);

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "calculations");
        thread.setDaemon(true);
        return thread;
    }

    /** Calls this whenever one is done, on the calculations' thread: it should wake whoever shows pictures. */
    public void onDone(Runnable call) {
        wake = call;
    }

    /** Begins one after all that were begun before; what it throws, {@link Future#get} throws. */
    public <T> Future<T> begin(Supplier<T> calculation) {
        CompletableFuture<T> begun = CompletableFuture.supplyAsync(calculation, thread);
        // Only now is it done for whoever looks; a wake from within could come too early.
        last = begun.whenComplete((done, failure) -> wake.run());
        return begun;
    }

    /** Begins no more; what goes on is left to itself. */
    @Override
    public void close() {
        last.cancel(false);
        thread.shutdownNow();
    }
}
