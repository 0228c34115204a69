// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.store.Store;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Verification;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against records that can be taken care of only by commands: a parent makes a backup, checks the records, goes
 * back, takes in another file, moves to a new computer and writes a table out, by keys, on a page that says each time what
 * would be gained and lost.
 */
class CareJourneyTest {
    private static final Instant NEXT_DAY = Practised.BEGAN.plusSeconds(100_000);
    private static final String TO_THE_PAGE = "3 m Up Up Up Up Enter";

    @TempDir
    private Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void practise() {
        file = Practised.once(folder);
    }

    private int answers(Path in) {
        return Integer.parseInt(Rows.column(in, "SELECT COUNT(*) FROM answer").get(0));
    }

    private static void shows(Journey journey, String words) {
        // A file's long name is broken wherever a line ends.
        String flat = journey.picture().replaceAll("\\s+", "");
        assertTrue(
                flat.contains(words.replaceAll("\\s+", "")), "\"" + words + "\" is not shown:\n" + journey.picture());
    }

    @ParameterizedTest
    @CsvSource({"80, 24, en", "80, 24, de", "80, 24, es", "60, 20, en", "60, 20, de", "60, 20, es"})
    void aBackupIsMadeTheRecordsAreCheckedAndGoneBackTo(int columns, int rows, String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        int all = answers(file);
        try (Journey journey = new Journey(file, NEXT_DAY, columns, rows, true).speak(language)) {
            journey.rest(50).keys(TO_THE_PAGE);
            shows(journey, words.say("care.none"));
            shows(journey, words.say("care.export"));
            journey.keys("1");
            shows(journey, words.say("care.backup.done", "2026-03-02-by-hand"));
            journey.keys("2");
            shows(journey, words.say("care.check.well"));
            try (Store store = Store.open(file)) {
                store.add(new Child(new UUID(8, 8), "Bo", NEXT_DAY));
            }
            journey.keys("3");
            shows(journey, words.say("care.which"));
            shows(journey, "2026-03-02-by-hand");
            journey.keys("1");
            shows(journey, words.say("care.restore.aside"));
            shows(journey, words.say("count.children.one", 1) + ", " + words.say("count.drills.many", 0));
            journey.keys("Esc");
            shows(journey, words.say("family.unchanged"));
            assertEquals(2, children());
            journey.keys("3 1 Enter");
            shows(journey, words.say("care.restore.done"));
            assertTrue(journey.home().isReplaced());
            journey.keys("Enter");
            assertFalse(journey.isGoing(), "nobody is to go on with a home that is closed");
        }
        assertEquals(1, children());
        assertEquals(all, answers(file));
        assertEquals(List.of(), Verification.of(file));
    }

    private int children() {
        return Rows.column(file, "SELECT id FROM child").size();
    }

    @ParameterizedTest
    @CsvSource({"80, 24, en", "60, 20, de", "60, 20, es"})
    void movingTakesThreeStepsAndTheNewComputerBeginsWithTheRecords(int columns, int rows, String language)
            throws IOException {
        Words words = Words.of(Locale.forLanguageTag(language));
        Path stick = Files.createDirectory(folder.resolve("stick"));
        try (Journey journey = new Journey(file, NEXT_DAY, columns, rows, true).speak(language)) {
            journey.rest(50).keys(TO_THE_PAGE + " 5");
            shows(journey, words.say("care.move.name"));
            shows(journey, words.say("care.move.then"));
            journey.type(stick.toString()).keys("Enter");
            shows(journey, words.say("care.move.then"));
        }
        Path copy = stick.resolve(String.valueOf(file.getFileName()));
        assertEquals(List.of(), Verification.of(copy));
        Path fresh = Files.createDirectory(folder.resolve("new computer")).resolve("family.db");
        try (Journey journey = new Journey(fresh, NEXT_DAY, columns, rows, true).speak(language)) {
            journey.rest(50);
            shows(journey, words.say("home.bring"));
            journey.keys("2");
            shows(journey, words.say("care.restore.name"));
            journey.type(copy.toString()).keys("Enter");
            shows(journey, words.counted("count.answers", answers(copy), answers(copy)));
            journey.keys("Enter");
            shows(journey, words.say("care.restore.done"));
        }
        assertEquals(answers(file), answers(fresh));
    }

    @ParameterizedTest
    @CsvSource({"80, 24, en", "60, 20, de", "60, 20, es"})
    void anotherFileIsTakenInAfterAPreviewAndAQuestionForEachName(int columns, int rows, String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        Path other = folder.resolve("other.db");
        String name = Rows.column(file, "SELECT name FROM child").get(0);
        try (Store store = Store.open(other)) {
            store.add(new Child(new UUID(8, 9), name, NEXT_DAY));
            store.add(new Child(new UUID(8, 8), "Bo", NEXT_DAY));
        }
        try (Journey journey = new Journey(file, NEXT_DAY, columns, rows, true).speak(language)) {
            journey.rest(50).keys(TO_THE_PAGE + " 4");
            shows(journey, words.say("care.merge.name"));
            journey.type(folder.resolve("gone.db").toString()).keys("Enter");
            shows(journey, "gone.db");
            journey.keys("Esc 4").type(other.toString()).keys("Enter");
            shows(journey, words.say("command.merge.clash", name));
            journey.keys("2");
            shows(journey, words.say("count.children.many", 2));
            assertEquals(1, children());
            journey.keys("Enter");
            shows(journey, words.say("care.merge.done", Backups.of(file).folder()));
        }
        try (Store store = Store.open(file)) {
            assertEquals(
                    List.of(name, name + " 2", "Bo").stream().sorted().toList(),
                    store.children().stream().map(Child::name).sorted().toList());
        }
    }

    @Test
    void allAnswersAreWrittenToATableThatIsNeverWrittenOver() throws IOException {
        Path table = folder.resolve("answers.csv");
        try (Journey journey = new Journey(file, NEXT_DAY, 80, 24, true)) {
            journey.keys(TO_THE_PAGE + " 6").type(table.toString()).keys("Enter");
            shows(journey, "It holds a child's answers");
            assertEquals(answers(file) + 1, Files.readAllLines(table).size());
            journey.keys("6").type(table.toString()).keys("Enter");
            shows(journey, "is already there");
        }
        assertEquals(answers(file) + 1, Files.readAllLines(table).size());
    }
}
