// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import fourfold.home.Environment;
import fourfold.terminal.SessionClock;
import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Guards against a command that works on a large file and gives no sign of it. */
class LongWorkTest {
    @Test
    @Timeout(30)
    void whoWaitsSeesHowFarTheWorkHasComeUntilItIsDone() {
        StringWriter err = new StringWriter();
        Environment world = CommandRun.world(
                Path.of("none.db"),
                true,
                new BufferedReader(new StringReader("")),
                new StringWriter(),
                err,
                () -> new SessionClock(CommandRun.NOW, ZoneId.of("Europe/Berlin"), () -> 0L));
        String done = LongWork.of(new App(world), Duration.ZERO, Duration.ofMillis(100), advance -> {
            waitFor("Still at it: 0 seconds.", err);
            advance.to(43);
            advance.to(7);
            waitFor("43 % done after ", err);
            return "work";
        });
        assertEquals("work", done);
        assertFalse(err.toString().contains(" 7 %"), err.toString());
    }

    private static void waitFor(String sign, StringWriter err) {
        while (!err.toString().contains(sign)) {
            Thread.onSpinWait();
        }
    }
}
