// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Phase;
import fourfold.log.Answer;
import fourfold.screens.DigitReader;
import fourfold.store.Impatient;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against a child who waits for another program: a real second connection holds the real file in the middle of a
 * drill, and every key is answered all the same.
 */
class HeldFileTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final Duration LONG = Duration.ofSeconds(60);
    private static final Duration SHORT = Duration.ofMillis(200);
    private static final long A_TENTH = 100_000_000L;

    @TempDir
    private Path folder;

    /** How long each key took to be answered by the loop, in nanoseconds. */
    private final List<Long> took = new ArrayList<>();

    @BeforeEach
    void aFileWithAChild() {
        Practised.children(folder, "Mina");
    }

    private Path file() {
        return folder.resolve("family.db");
    }

    private Journey home(Duration patience) {
        return new Journey(file(), Impatient.store(file(), patience), START, 80, 24, true);
    }

    /** Two numbers were copied, and a third stands there. */
    private Journey drill(Duration patience) {
        Journey journey = home(patience).keys("Enter Enter").rest(100).answer().answer();
        assertTrue(asked(journey).matches("[0-9]+"), journey.picture());
        return journey.doesNotWaitForFile();
    }

    private static String asked(Journey journey) {
        return DigitReader.read(journey.picture()).orElse("");
    }

    /** Presses keys; each must change the picture, at the latest by the loop's next tick. */
    private void answered(Journey journey, String keys) {
        for (String key : keys.split(" ")) {
            String before = journey.picture();
            long pressed = System.nanoTime();
            journey.keys(key);
            took.add(System.nanoTime() - pressed);
            if (journey.picture().equals(before)) {
                journey.rest(50);
            }
            assertNotEquals(before, journey.picture(), key);
        }
    }

    private void assertNoKeyWaited() {
        // Another program may have the processor for a moment; the file is held for as long as it takes.
        assertTrue(took.stream().filter(nanos -> nanos > A_TENTH).count() <= 1, took.toString());
        assertTrue(took.stream().allMatch(nanos -> nanos < 10 * A_TENTH), took.toString());
    }

    private List<String> typed() {
        return Rows.column(file(), "SELECT COALESCE(typed, '') FROM answer_log ORDER BY position");
    }

    private static List<Answer> answers(Journey journey) {
        Store store = journey.store();
        return store.answers(store.children().get(0).id());
    }

    private static String digits(String number) {
        return String.join(" ", number.split(""));
    }

    @Test
    void everyKeyIsAnsweredAndTheNextQuestionComesWithTheCommit() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            String number = asked(journey);
            answered(journey, digits(number) + " Enter");
            for (int i = 0; i < 30; i++) {
                answered(journey, i % 3 == 0 ? "Enter" : i % 3 == 1 ? "7" : "Backspace");
                assertEquals(number, asked(journey).substring(0, number.length()));
                assertFalse(journey.picture().contains("not kept"), journey.picture());
            }
            assertNoKeyWaited();
            assertEquals(2, typed().size());
            assertEquals(
                    2,
                    journey.drill()
                            .orElseThrow()
                            .progress()
                            .drill()
                            .orElseThrow()
                            .size());
            other.letGo();
            journey.waitsForFile().rest(700);
            assertEquals(number, typed().get(2));
            assertNotEquals(number, asked(journey));
            assertFalse(journey.picture().contains("One moment"), journey.picture());
            String next = asked(journey);
            journey.answer();
            assertEquals(List.of(number, next), typed().subList(2, 4));
        }
    }

    @Test
    void afterOneSecondACalmWordStandsThereAndNotBefore() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter").rest(900);
            assertFalse(journey.picture().contains("One moment"), journey.picture());
            journey.rest(100);
            assertTrue(journey.picture().contains("One moment."), journey.picture());
            other.letGo();
        }
    }

    @Test
    void theCalmWordIsSaidInTheChildsLanguage() {
        try (Journey journey = home(LONG).speak("de")) {
            journey.keys("Enter Enter").rest(100).doesNotWaitForFile();
            try (Holder other = Holder.writing(file())) {
                journey.keys(digits(asked(journey)) + " Enter").rest(1000);
                assertTrue(journey.picture().contains("Einen Moment."), journey.picture());
                other.letGo();
            }
        }
    }

    @Test
    void theRightAnswerStandsItsTimeHoweverLongItWasToBeKept() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            String number = asked(journey);
            journey.keys(digits(number) + " Enter").rest(3000);
            other.letGo();
            journey.waitsForFile().rest(200);
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Right, journey.picture());
            journey.rest(150);
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Asking, journey.picture());
        }
    }

    @Test
    void theTimeOfTheNextQuestionBeginsWithItsPicture() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter").rest(2000);
            other.letGo();
            journey.waitsForFile().rest(400).answer();
            Duration whole = answers(journey).get(3).whole().orElseThrow();
            assertTrue(whole.compareTo(Duration.ofSeconds(1)) >= 0, whole.toString());
            assertTrue(whole.compareTo(Duration.ofMillis(1600)) < 0, whole.toString());
        }
    }

    @Test
    void manyKeysAtOnceBelongToNoQuestion() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            String number = asked(journey);
            journey.keys(digits(number) + " Enter").paste("1234567890".repeat(20));
            for (int i = 0; i < 50; i++) {
                answered(journey, Integer.toString(i % 10));
            }
            assertNoKeyWaited();
            other.letGo();
            journey.waitsForFile().rest(700);
            assertEquals(number, typed().get(2));
            assertEquals(3, typed().size());
            assertTrue(
                    journey.drill().orElseThrow().phase() instanceof Phase.Asking asking
                            && asking.typed().isEmpty(),
                    journey.picture());
        }
    }

    @Test
    void aPauseMeantWhileTheFileIsHeldComesOnceWhenTheAnswerIsKept() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            answered(journey, digits(asked(journey)) + " Enter Esc Esc Esc");
            other.letGo();
            journey.waitsForFile();
            assertTrue(journey.picture().contains("Pause"), journey.picture());
            assertEquals(3, typed().size());
            journey.keys("Enter").rest(700).answer();
            assertEquals(4, typed().size());
        }
    }

    @Test
    void aProgramStoppedWhileTheFileIsHeldGoesOnWithAPause() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter Ctrl-Z");
            other.letGo();
            journey.waitsForFile();
            assertTrue(journey.picture().contains("Pause"), journey.picture());
            assertEquals(3, typed().size());
        }
    }

    @Test
    void aDrillThatCanNotBeginYetAnswersKeysAndAsksNothing() {
        try (Journey journey = home(LONG).keys("Enter").doesNotWaitForFile();
                Holder other = Holder.writing(file())) {
            answered(journey, "Enter 5 6 Enter 7");
            assertNoKeyWaited();
            assertEquals("", asked(journey));
            assertTrue(journey.picture().contains("One moment."), journey.picture());
            other.letGo();
            journey.waitsForFile();
            assertTrue(asked(journey).matches("[0-9]+"), journey.picture());
            journey.answer();
            assertEquals(1, typed().size());
        }
    }

    @Test
    void theEndOfADrillIsShownWhileTheFileIsHeld() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            answered(journey, "Esc Esc");
            journey.waitsForFile();
            assertTrue(journey.picture().contains("Everything is kept."), journey.picture());
            assertNoKeyWaited();
            other.letGo();
        }
    }

    @Test
    void whenItLastsTheChildIsToldAndMayGoOnAndAllIsKeptLater() {
        try (Journey journey = drill(SHORT);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter").waitsForFile();
            assertTrue(journey.picture().contains("The last answer is not kept yet."), journey.picture());
            journey.doesNotWaitForFile();
            answered(journey, "Enter");
            assertTrue(journey.picture().contains("The last answer is not kept yet."), journey.picture());
            journey.waitsForFile().keys("Space").rest(700);
            journey.answer().doesNotWaitForFile();
            answered(journey, digits(asked(journey)) + " Enter");
            assertTrue(journey.picture().contains("3 answers not kept yet"), journey.picture());
            assertNoKeyWaited();
            other.letGo();
            journey.waitsForFile().rest(16_000);
            assertFalse(journey.picture().contains("not kept yet"), journey.picture());
            assertEquals(5, typed().size());
            assertEquals(List.of(), journey.home().practice().toTell());
        }
    }

    @Test
    void whoeverStopsBecauseItLastsSeesNoNextQuestionAndIsToldAtTheEnd() {
        try (Journey journey = drill(SHORT);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter").waitsForFile().doesNotWaitForFile();
            answered(journey, "Esc");
            assertTrue(journey.picture().contains("The last answer is not kept yet."), journey.picture());
            journey.waitsForFile();
            assertTrue(journey.picture().contains("You did well. 1 answer is not kept yet."), journey.picture());
            other.letGo();
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Everything is kept."), journey.picture());
            assertEquals(3, typed().size());
        }
    }

    @Test
    void whoeverLeavesWhileTheFileIsHeldLeavesAtOnceAndNothingIsLostIfItIsLetGo() {
        try (Journey journey = drill(LONG);
                Holder other = Holder.writing(file())) {
            String number = asked(journey);
            journey.keys(digits(number) + " Enter");
            long pressed = System.nanoTime();
            journey.keys("Ctrl-C");
            assertTrue(System.nanoTime() - pressed < 10 * A_TENTH);
            assertFalse(journey.isGoing());
            other.letGo();
            journey.waitsForFile();
            assertEquals(number, typed().get(2));
            assertEquals(List.of(), journey.home().practice().toTell());
        }
    }

    @Test
    void whoeverLeavesWhileTheFileStaysHeldIsToldWhatIsLost() {
        try (Journey journey = drill(SHORT);
                Holder other = Holder.writing(file())) {
            journey.keys(digits(asked(journey)) + " Enter Ctrl-C");
            journey.waitsForFile();
            List<String> told = journey.home().practice().toTell();
            assertEquals(1, told.size());
            assertTrue(
                    told.get(0).startsWith("1 answer of the last drill could not be kept and is lost:"), told.get(0));
            other.letGo();
            assertEquals(2, typed().size());
        }
    }

    @Test
    void aReaderNeverHoldsUpTheDrill() {
        try (Journey journey = drill(Duration.ZERO).waitsForFile();
                Holder other = Holder.reading(file())) {
            // Only in write-ahead mode do readers and writers leave each other alone (sqlite.org/wal.html).
            assertEquals(List.of("wal"), Rows.column(file(), "PRAGMA journal_mode"));
            for (int i = 0; i < 5; i++) {
                journey.answer();
            }
            assertFalse(journey.picture().contains("not kept"), journey.picture());
            assertEquals(answers(journey).size(), typed().size());
            assertTrue(typed().size() >= 6, typed().toString());
            journey.keys("Esc Esc");
            assertTrue(journey.picture().contains("Everything is kept."), journey.picture());
            other.letGo();
        }
    }

    @Test
    void aParentsKeysAreAnsweredWhileTheFileIsHeldAndDoneInOrderWhenItIsLetGo() {
        try (Journey journey = home(LONG).keys("3").doesNotWaitForFile();
                Holder other = Holder.writing(file())) {
            answered(journey, "f v t");
            assertNoKeyWaited();
            assertTrue(journey.picture().contains("One moment."), journey.picture());
            assertFalse(journey.picture().contains("act on the table"), journey.picture());
            other.letGo();
            journey.waitsForFile();
            assertFalse(journey.picture().contains("One moment"), journey.picture());
            assertTrue(journey.picture().contains("keys f h r act on the table of 2"), journey.picture());
            assertTrue(journey.picture().contains("v divisions"), journey.picture());
            journey.keys("u");
            assertTrue(journey.picture().contains("Undone: "), journey.picture());
        }
    }

    @Test
    void aParentIsToldWhenTheFileStaysHeld() {
        try (Journey journey = home(SHORT).keys("3");
                Holder other = Holder.writing(file())) {
            journey.keys("f");
            assertTrue(journey.picture().contains("ould not keep the change in"), journey.picture());
            other.letGo();
            journey.keys("f");
            assertTrue(journey.picture().contains("practised more, until fluent"), journey.picture());
        }
    }
}
