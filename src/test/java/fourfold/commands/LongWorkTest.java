package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import fourfold.terminal.SessionClock;
import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Guards against a command that works on a large file and gives no sign of it. */
class LongWorkTest {
    @Test
    void whoWaitsSeesThatTheWorkGoesOnUntilItIsDone() {
        CountDownLatch twice = new CountDownLatch(2);
        StringWriter err = new StringWriter() {
            @Override
            public void flush() {
                twice.countDown();
            }
        };
        Environment world = CommandRun.world(
                Path.of("none.db"),
                true,
                new BufferedReader(new StringReader("")),
                new StringWriter(),
                err,
                () -> new SessionClock(CommandRun.NOW, ZoneId.of("Europe/Berlin"), () -> 0L));
        boolean seen = LongWork.of(new App(world), Duration.ZERO, Duration.ofMillis(100), advance -> {
            while (err.toString().isEmpty()) {
                Thread.onSpinWait();
            }
            advance.to(43);
            advance.to(7);
            return await(twice);
        });
        assertTrue(seen, "no sign came");
        assertTrue(err.toString().startsWith("Still at it: 0 seconds."), err.toString());
        assertTrue(err.toString().contains("43 % done after "), err.toString());
        assertEquals("work", LongWork.of(new App(world), Duration.ofDays(1), Duration.ofDays(1), advance -> "work"));
    }

    private static boolean await(CountDownLatch latch) {
        try {
            return latch.await(30, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}
