// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a drill that stops, or loses answers without a word, when the file can't be written for a while. */
class TroubleTest {
    private static final String DENY =
            "CREATE TRIGGER full BEFORE INSERT ON answer BEGIN SELECT RAISE(FAIL, 'no room'); END";
    private static final int TOO_LATE_FOR_A_QUICK_TRY = 16_000;

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    private Journey drill() {
        Practised.children(folder, "Mina");
        Journey journey = new Journey(file(), Instant.parse("2026-03-02T08:00:00Z"), 80, 24, true);
        journey.keys("Enter Enter").rest(100);
        return journey.answer().answer();
    }

    /** What is on the screen, wherever a line ends. */
    private static String words(Journey journey) {
        return journey.picture().replaceAll("\\s+", " ");
    }

    private static void assertAllThere(Journey journey, int atLeast) {
        List<Answer> answers =
                journey.store().answers(journey.store().children().get(0).id());
        assertEquals(
                IntStream.rangeClosed(1, answers.size()).boxed().toList(),
                answers.stream().map(Answer::position).toList());
        assertTrue(answers.size() >= atLeast, answers.size() + " answers");
    }

    @Test
    void theChildGoesOnAndAllIsWrittenInOrderWhenTheDiskAllowsIt() {
        try (Journey journey = drill()) {
            Rows.change(file(), DENY);
            journey.answer();
            assertTrue(words(journey).contains("The last answer is not kept yet. It is not your fault."));
            assertTrue(words(journey).contains("breaks a rule"), journey.picture());
            journey.keys("Enter");
            assertTrue(words(journey).contains("The last answer is not kept yet."));
            journey.keys("Space").rest(700);
            journey.answer().answer();
            assertTrue(words(journey).contains("3 answers not kept yet"), journey.picture());
            Rows.change(file(), "DROP TRIGGER full");
            journey.rest(TOO_LATE_FOR_A_QUICK_TRY).answer();
            assertFalse(words(journey).contains("not kept yet"), journey.picture());
            assertAllThere(journey, 5);
            assertEquals(List.of(), journey.home().practice().toTell());
        }
    }

    @Test
    void aFileThatIsMovedAwayIsNoticedAtOnceAndCaughtUpWhenItIsBack() throws IOException {
        try (Journey journey = drill()) {
            Path away = folder.resolve("away.db");
            Files.move(file(), away);
            journey.answer();
            assertTrue(words(journey).contains("the file was moved, removed or replaced"), journey.picture());
            assertFalse(Files.exists(file()));
            journey.keys("Space").rest(700);
            journey.answer();
            Files.move(away, file());
            journey.keys("Esc Esc");
            assertTrue(journey.picture().contains("Everything is kept."), journey.picture());
            assertAllThere(journey, 4);
        }
    }

    @Test
    void aFileThatIsReplacedIsNeverWrittenToByMistake() throws IOException {
        try (Journey journey = drill()) {
            byte[] other = Files.readAllBytes(file());
            Path replacement = Files.write(folder.resolve("replacement"), other);
            Files.move(replacement, file(), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            journey.answer();
            assertTrue(words(journey).contains("the file was moved, removed or replaced"), journey.picture());
            org.junit.jupiter.api.Assertions.assertArrayEquals(other, Files.readAllBytes(file()));
        }
    }

    @Test
    void whatIsLostInTheEndIsSaid() throws IOException {
        try (Journey journey = drill()) {
            Files.delete(file());
            journey.answer().keys("Space").rest(700);
            journey.answer().keys("Esc Esc");
            assertTrue(
                    journey.picture().contains("2 answers are not kept yet. It is not your fault."), journey.picture());
            assertFalse(journey.picture().contains("Everything is kept"));
            journey.keys("Enter");
            assertTrue(journey.picture().contains("2 answers are not kept yet."));
            journey.keys("Esc");
            List<String> told = journey.home().practice().toTell();
            assertEquals(1, told.size());
            assertTrue(
                    told.get(0)
                            .startsWith("2 answers of the last drill could not be kept and are lost: could not keep the"
                                    + " answer in "),
                    told.toString());
        }
    }

    @Test
    void aTerminalThatClosesInTroubleTellsWhatIsLost() {
        try (Journey journey = drill()) {
            Rows.change(file(), DENY);
            journey.answer().hangUp();
            assertTrue(journey.home().practice().toTell().get(0).startsWith("1 answer of the last drill"));
        }
    }

    @Test
    void aFailureAtTheVeryFirstMomentCostsNothing() {
        Practised.children(folder, "Mina");
        try (Journey journey = new Journey(file(), Instant.parse("2026-03-02T08:00:00Z"), 80, 24, true)) {
            Rows.change(file(), DENY.replace("answer", "drill"));
            journey.keys("Enter Enter").rest(100).keys("Space").rest(100);
            journey.answer().answer();
            assertTrue(journey.picture().contains("2 answers not kept yet"), journey.picture());
            Rows.change(file(), "DROP TRIGGER full");
            journey.keys("Esc Esc");
            assertAllThere(journey, 2);
        }
    }
}
