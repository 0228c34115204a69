// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.home.RecordsCare;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageLoop;
import fourfold.terminal.Pasted;
import fourfold.terminal.Performer;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalSession;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a parent who waits for a backup or a check of years and sees nothing move. */
class CareProgressTest {
    private static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");

    private final List<PageEffect.Outside> begun = new ArrayList<>();
    private final CompletableFuture<PageEffect.Outcome> end = new CompletableFuture<>();
    private long nanos = 1_000_000_000L;

    /** The world outside, in which work lasts until the test ends it. */
    private final class Lasting implements Performer {
        @Override
        public Future<PageEffect.Outcome> begin(PageEffect.Outside effect) {
            begun.add(effect);
            return end;
        }

        @Override
        public void finish(Duration longest) {
            throw new IllegalStateException("nobody waits here");
        }

        @Override
        public String oneMoment() {
            return "One moment";
        }

        @Override
        public String windowTooSmall() {
            return "too small";
        }
    }

    @ParameterizedTest
    @CsvSource({"1, ''", "2, ''", "3 1, another.db", "4, another.db", "5, stick"})
    void whileTheWorkLastsThePageSaysHowFarItHasCome(String keys, String name) {
        RecordsCare.State none = new RecordsCare.State(
                Optional.of(Path.of("family.db")), Path.of("backups"), List.of(), Optional.empty(), Optional.empty());
        TerminalSession session =
                TerminalSession.on(new DefaultVirtualTerminal(new TerminalSize(80, 24)), true, true, () -> nanos);
        SessionClock clock =
                new SessionClock(() -> NOW.plusNanos(nanos - 1_000_000_000L), ZoneId.of("UTC"), () -> nanos);
        PageLoop loop = new PageLoop(session, clock, new Lasting(), CarePage.of(Words.english(), ZoneOffset.UTC, none));
        for (String key : keys.split(" ")) {
            session.press(new KeyStroke(key.charAt(0), false, false), nanos);
            turn(loop);
        }
        if (!name.isEmpty()) {
            session.press(new Pasted(name), nanos);
            session.press(new KeyStroke(KeyType.Enter), nanos);
            turn(loop);
        }
        assertEquals(1, begun.size(), loop.shown().toString());
        SoFar soFar = ((SoFar.Told) begun.get(0)).soFar();
        rest(loop);
        assertTrue(loop.shown().toString().contains("One moment"), loop.shown().toString());
        assertFalse(loop.shown().toString().contains(" %"), loop.shown().toString());
        soFar.to(42);
        rest(loop);
        assertTrue(loop.shown().toString().contains(" 42 %"), loop.shown().toString());
        soFar.to(97);
        rest(loop);
        assertTrue(loop.shown().toString().contains(" 97 %"), loop.shown().toString());
        end.complete(new CareWork.Told(List.of("It is done."), Optional.empty(), Optional.empty()));
        rest(loop);
        assertTrue(loop.shown().toString().contains("It is done."), loop.shown().toString());
        assertFalse(loop.shown().toString().contains(" %"), loop.shown().toString());
        session.close();
    }

    /** Ten seconds go by on the clock that is set by hand. */
    private void rest(PageLoop loop) {
        for (int i = 0; i < 200; i++) {
            turn(loop);
        }
    }

    private void turn(PageLoop loop) {
        nanos += 50_000_000L;
        assertTrue(loop.turn(Duration.ZERO));
    }
}
