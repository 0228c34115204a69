package fourfold.commands;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/** Work that lasts on a large file: whoever waits for it sees every few seconds that it goes on. */
final class LongWork {
    private static final Duration EVERY = Duration.ofSeconds(5);

    private LongWork() {}

    /** Does the work, and says on the error stream how long it has gone on. */
    static <T> T of(App app, Supplier<T> work) {
        return of(app, EVERY, work);
    }

    /** The same, said so often. */
    static <T> T of(App app, Duration every, Supplier<T> work) {
        ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(LongWork::thread);
        AtomicLong times = new AtomicLong();
        long millis = every.toMillis();
        Runnable say = () -> {
            long seconds = times.incrementAndGet() * millis / 1000;
            app.world().err().println(app.words().say("command.lasts", seconds));
            app.world().err().flush();
        };
        ScheduledFuture<?> signs = clock.scheduleAtFixedRate(say, millis, millis, TimeUnit.MILLISECONDS);
        try {
            return work.get();
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
