// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.terminal.TerminalSession;
import fourfold.upkeep.Advance;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Work that lasts on a large file: whoever waits for it at a terminal sees after a second, and every few seconds, how far
 * it has come. Each sign is a line of its own, so that a screen reader speaks it once.
 */
final class LongWork {
    private static final Duration FIRST = Duration.ofSeconds(1);
    private static final Duration EVERY = Duration.ofSeconds(5);

    private LongWork() {}

    /** Does work that tells nothing of how far it has come, and says on the error stream how long it has gone on. */
    static <T> T of(App app, Supplier<T> work) {
        return of(app, advance -> work.get());
    }

    /** Does the work, and says on the error stream how much of it is done. */
    static <T> T of(App app, Function<Advance, T> work) {
        return TerminalSession.isInteractive() ? of(app, FIRST, EVERY, work) : work.apply(Advance.UNSEEN);
    }

    /** The same, the first sign and the others after such times. */
    static <T> T of(App app, Duration first, Duration every, Function<Advance, T> work) {
        ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(LongWork::thread);
        AtomicInteger percent = new AtomicInteger();
        long begun = System.nanoTime();
        Runnable say = () -> {
            long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - begun);
            int so = percent.get();
            app.world()
                    .err()
                    .println(
                            so > 0
                                    ? app.words().say("command.lasts.percent", so, seconds)
                                    : app.words().say("command.lasts", seconds));
            app.world().err().flush();
        };
        ScheduledFuture<?> signs =
                clock.scheduleAtFixedRate(say, first.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
        try {
            return work.apply(now -> percent.accumulateAndGet(now, Math::max));
        } finally {
            signs.cancel(false);
            clock.shutdown();
        }
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "signs");
        thread.setDaemon(true);
        return thread;
    }
}
