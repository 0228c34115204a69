// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a drill whose picture jumps or shrinks, and against keys that are lost without a sign. */
class DrillPlacesTest {
    @TempDir
    private Path folder;

    /** At the first question from memory of a first day. */
    private Journey asked(int columns, int rows, boolean unicode) {
        Journey journey =
                new Journey(folder.resolve("family.db"), Instant.parse("2026-03-02T16:00:00Z"), columns, rows, unicode);
        journey.keys("Enter").type("Mina").keys("Enter").keys("Enter Enter").rest(100);
        return toMemory(journey);
    }

    private static Journey toMemory(Journey journey) {
        for (int i = 0;
                i < 100 && !(isAsking(journey) && asking(journey).purpose().isFromMemory());
                i++) {
            journey.give(0);
        }
        assertTrue(asking(journey).purpose().isFromMemory());
        return journey;
    }

    private static boolean isAsking(Journey journey) {
        return journey.drill().orElseThrow().phase() instanceof Asking;
    }

    private static Asking asking(Journey journey) {
        return (Asking) journey.drill().orElseThrow().phase();
    }

    /** The rows with ink in them that stood there before and stand there still. */
    private static void assertStays(String before, String after) {
        List<String> then = before.lines().toList();
        List<String> now = after.lines().toList();
        // What is said, and the keys at the foot, are lines of their own.
        for (int y = 0; y < then.size() - 1; y++) {
            if (!then.get(y).isBlank() && !then.get(y).matches(".*[a-zA-Z]{3}.*")) {
                assertEquals(then.get(y), now.get(y), after);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"60, 20, true", "80, 24, true", "120, 40, true", "200, 60, true", "80, 24, false"})
    void whatIsTypedStaysWhereItWasTypedRightOrNot(int columns, int rows, boolean unicode) {
        try (Journey journey = asked(columns, rows, unicode)) {
            String question = journey.picture();
            journey.rest(1000).type(Integer.toString(asking(journey).prompt().expected()));
            String typed = journey.picture();
            assertTrue(question.lines().filter(l -> !l.isBlank()).count() >= 4, question);
            journey.keys("Enter");
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Right);
            assertStays(typed, journey.picture());
            toMemory(journey.rest(700));
            journey.rest(1000).type(Integer.toString(asking(journey).prompt().expected() + 1));
            typed = journey.picture();
            journey.keys("Enter");
            assertEquals(Phase.Reason.PUTTING_RIGHT, asking(journey).reason());
            assertStays(typed, journey.picture());
            String corrected = journey.picture();
            journey.type(Integer.toString(asking(journey).prompt().expected()));
            assertStays(corrected, journey.picture());
        }
    }

    @Test
    void aKeyWhileRightStandsIsAnswered() {
        try (Journey journey = asked(80, 24, true)) {
            journey.rest(1000)
                    .type(Integer.toString(asking(journey).prompt().expected()))
                    .keys("Enter 5");
            assertTrue(journey.picture().contains("Wait for the next one."), journey.picture());
            journey.rest(700);
            assertFalse(journey.picture().contains("Wait for the next one."), journey.picture());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Backspace | There is nothing to take back.",
                "a         | Type with the keys 0 to 9. Press ? to see all keys.",
                "Up        | That key types no number. Is Num Lock on?",
                "1 2 3 4 5 | That is long enough. Press Enter."
            })
    void aKeyThatDoesNothingSaysWhy(String keys, String note) {
        try (Journey journey = asked(60, 20, true)) {
            journey.rest(300).keys(keys);
            assertTrue(journey.picture().contains(note), journey.picture());
            journey.keys("Backspace 7");
            assertFalse(journey.picture().contains(note), journey.picture());
        }
    }

    @Test
    void enterComesTooEarlyOrShowsTheAnswer() {
        try (Journey journey = asked(80, 24, true)) {
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Have a look first."), journey.picture());
            journey.rest(1600).keys("Enter").rest(100);
            assertTrue(journey.picture().contains("You do not have to know it yet."), journey.picture());
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Type the number first."), journey.picture());
        }
    }

    @Test
    void theKeysAreShownWhileTheClockStands() {
        try (Journey journey = asked(80, 24, true)) {
            journey.keys("?");
            assertTrue(journey.picture().contains("0 to 9 type   Enter ready, or show me"), journey.picture());
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Paused);
            journey.keys("?");
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Paused, "asked again nothing is stopped");
            journey.keys("Enter");
            assertTrue(isAsking(journey));
        }
    }

    @Test
    void aChildWhoWalksAwayLeavesNoAnswerInTheFile() {
        try (Journey journey = asked(80, 24, true)) {
            long before = answers();
            journey.rest(45_000);
            assertTrue(journey.picture().contains("Are you still there?"), journey.picture());
            assertEquals(before, answers());
            journey.keys("Esc");
            assertEquals(before, answers());
        }
    }

    private long answers() {
        return Long.parseLong(Rows.column(folder.resolve("family.db"), "SELECT COUNT(*) FROM answer_log")
                .get(0));
    }
}
