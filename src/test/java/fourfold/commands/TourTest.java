// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.home.Home;
import fourfold.log.Surface;
import fourfold.scheduling.LastingGain;
import fourfold.screens.HomePerformer;
import fourfold.screens.child.HomePage;
import fourfold.screens.child.PageContext;
import fourfold.screens.child.Tour;
import fourfold.store.Store;
import fourfold.terminal.PageLoop;
import fourfold.terminal.SessionClock;
import fourfold.terminal.TerminalSession;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a tour that gets stuck, takes too long, or shows less than it promises. */
class TourTest {
    private static final String[] PROMISED = {
        "F O U R F O L D",
        "first name",
        "How many minutes",
        "Type this number",
        "Say it aloud",
        "It is covered now",
        "You were asked",
        "Type it once",
        "Read it aloud",
        "Everything is kept",
        "of 55 families fluent",
        "the plan"
    };

    @TempDir
    private Path folder;

    private long nanos = 1_000_000_000L;

    @Test
    void itShowsADrillAnErrorAnIntroductionTheStairsAndThePlanInNinetySeconds() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Store store = Store.open(file);
                TerminalSession stage = TerminalSession.on(
                        new DefaultVirtualTerminal(new TerminalSize(80, 24)), true, true, () -> nanos)) {
            SessionClock moments = new SessionClock(next, ZoneId.of("Europe/Berlin"), () -> nanos);
            Home household = Home.on(store, moments, () -> 1);
            PageLoop loop = new PageLoop(
                    stage,
                    moments,
                    new HomePerformer(household, Words.english()),
                    new HomePage.Open(new PageContext(Words.english(), new LastingGain(), Surface.TERMINAL))
                            .first(household));
            Tour tour = new Tour(stage, loop, household.children().list().size(), "Lu");
            Set<String> shown = new LinkedHashSet<>();
            long seconds = 0;
            // Planning goes on a run at a time between two pictures; a few pictures of the plan are enough.
            while (seconds < 240 && tour.turn(Duration.ZERO)) {
                assertTrue(household.practice().fileWork().finish(Duration.ofMinutes(1)));
                nanos += 50_000_000L * (loop.shown().toString().contains("the plan") ? 40 : 1);
                seconds = nanos / 1_000_000_000L;
                for (String words : PROMISED) {
                    if (loop.shown().toString().contains(words)) {
                        shown.add(words);
                    }
                }
            }
            assertTrue(seconds <= 90, "took " + seconds + " s, shown " + shown);
            assertTrue(shown.containsAll(Set.of(PROMISED)), shown.toString());
            assertTrue(
                    store.answers(household.children().list().get(1).id()).stream()
                            .anyMatch(a -> a.purpose().isFromMemory() && !a.isCorrect()),
                    "an error");
        }
    }

    @Test
    void anyKeyEndsIt() {
        Path file = Practised.once(folder);
        try (Store store = Store.open(file);
                TerminalSession stage = TerminalSession.on(
                        new DefaultVirtualTerminal(new TerminalSize(80, 24)), true, true, () -> nanos)) {
            SessionClock moments = new SessionClock(CommandRun.NOW, ZoneId.of("Europe/Berlin"), () -> nanos);
            Home household = Home.on(store, moments, () -> 1);
            PageLoop loop = new PageLoop(
                    stage,
                    moments,
                    new HomePerformer(household, Words.english()),
                    new HomePage.Open(new PageContext(Words.english(), new LastingGain(), Surface.TERMINAL))
                            .first(household));
            Tour tour = new Tour(stage, loop, 1, "Lu");
            assertTrue(tour.turn(Duration.ZERO));
            stage.press(new KeyStroke('x', false, false), nanos);
            assertFalse(tour.turn(Duration.ZERO));
        }
    }
}
