// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * Work on the family's file, done in order on one thread of its own, so that no key waits for the file. What comes of it
 * is a {@link Future}, and whoever shows pictures is woken when it is there. All methods but the work itself belong to the
 * thread that shows pictures.
 */
public final class FileWork implements AutoCloseable {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(FileWork::thread);
    private CompletableFuture<?> last = CompletableFuture.completedFuture(true);
    private volatile Runnable wake = () -> {};

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "file");
        // Whoever closes the program waits for it; nothing else should keep the program alive.
        thread.setDaemon(true);
        return thread;
    }

    /** Calls this whenever something is done, on the file's thread: it should wake whoever shows pictures. */
    public void onDone(Runnable call) {
        wake = call;
    }

    /** Begins some work after all that was begun before; what it throws, {@link Future#get} throws. */
    public <T> Future<T> begin(Supplier<T> work) {
        CompletableFuture<T> begun = CompletableFuture.supplyAsync(work, thread);
        // Only now is it done for whoever looks; a wake from within the work could come too early.
        last = begun.whenComplete((done, failure) -> wake.run());
        return begun;
    }

    /** Waits at most so long until all is done; false if it is not. */
    public boolean finish(Duration longest) {
        try {
            last.get(longest.toNanos(), TimeUnit.NANOSECONDS);
            return true;
        } catch (ExecutionException e) {
            // The failure is in the future, for the caller that began the work.
            return true;
        } catch (TimeoutException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Waits until all is done: a file that is held is waited for with the store's patience and no longer. */
    @Override
    public void close() {
        thread.shutdown();
        boolean done = false;
        while (!done && !Thread.currentThread().isInterrupted()) {
            done = finish(Duration.ofMinutes(1));
        }
    }
}
