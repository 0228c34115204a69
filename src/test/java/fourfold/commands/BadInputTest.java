// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against keys, windows and terminals no drill was made for: nothing crashes, and nothing that was counted is lost,
 * which {@link Journey} checks after every turn.
 */
class BadInputTest {
    private static final String KEYS = "0123456789abcdfhnoqrtuvyz×÷٣é~ ";
    private static final List<KeyType> OTHERS = List.of(
            KeyType.Enter,
            KeyType.Enter,
            KeyType.Enter,
            KeyType.Escape,
            KeyType.Backspace,
            KeyType.Delete,
            KeyType.Tab,
            KeyType.ArrowUp,
            KeyType.ArrowDown,
            KeyType.ArrowLeft,
            KeyType.ArrowRight,
            KeyType.Home,
            KeyType.End,
            KeyType.PageUp,
            KeyType.F1,
            KeyType.Unknown);

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    private Journey open() {
        return new Journey(file(), Instant.parse("2026-03-02T16:00:00Z"), 80, 24, true);
    }

    /** In a drill of five minutes, two numbers copied. */
    private Journey inADrill() {
        Practised.children(folder, "Mina");
        Journey journey = open().keys("Enter 5 Enter").rest(100);
        return journey.answer().answer();
    }

    private static Asking asking(Journey journey) {
        return assertInstanceOf(Asking.class, journey.drill().orElseThrow().phase());
    }

    private List<String> typed() {
        return Rows.column(file(), "SELECT COALESCE(typed, '') FROM answer_log ORDER BY position");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aMashedKeyboardBreaksNothing(long seed) {
        Practised.children(folder, "Mina", "Ivo");
        SplittableRandom random = new SplittableRandom(seed);
        for (int sessions = 0, keys = 0; keys < 1500; sessions++) {
            assertTrue(sessions < 500, "the program is always left at once");
            try (Journey journey = open()) {
                // Straight into a drill, where most of the mashing shall be.
                journey.keys("Enter Enter").rest(50);
                for (; keys < 1500 && journey.isGoing(); keys++) {
                    journey.press(key(random), random.nextInt(4) == 0 ? random.nextInt(2000) : random.nextInt(120));
                    if (random.nextInt(100) == 0) {
                        journey.size(random.nextInt(1, 220), random.nextInt(1, 70));
                    }
                }
            }
        }
        assertEquals(List.of("ok"), Rows.column(file(), "PRAGMA integrity_check"));
        assertTrue(typed().size() > 20, "answers: " + typed().size());
        assertEquals(0, CommandRun.of(file(), "export", "answers").code());
    }

    private static KeyStroke key(SplittableRandom random) {
        return random.nextInt(3) == 0
                ? new KeyStroke(OTHERS.get(random.nextInt(OTHERS.size())))
                : new KeyStroke(
                        KEYS.charAt(random.nextInt(KEYS.length())), random.nextInt(40) == 0, random.nextInt(20) == 0);
    }

    @ParameterizedTest
    @CsvSource({"7", "Enter", "Backspace"})
    void aHeldKeyMakesAPauseAndFewAnswers(String key) {
        try (Journey journey = inADrill()) {
            KeyStroke held = key.equals("7") ? new KeyStroke('7', false, false) : new KeyStroke(KeyType.valueOf(key));
            boolean paused = false;
            // Thirty times a second for two minutes.
            for (int i = 0; i < 3600; i++) {
                journey.press(held, 33);
                Phase phase = journey.drill().orElseThrow().phase();
                paused |= phase instanceof Phase.Paused || phase instanceof Phase.HandsOff;
            }
            assertTrue(journey.isGoing());
            assertTrue(typed().size() < 20, typed().toString());
            assertTrue(paused, "nobody means so many keys");
        }
    }

    @Test
    void aPasteOfTenThousandCharactersAnswersNothing() {
        try (Journey journey = inADrill()) {
            journey.paste("7\n".repeat(5000)).rest(200);
            assertEquals("", asking(journey).typed());
            journey.answer();
            assertEquals(3, typed().size());
        }
    }

    @Test
    void lettersAndSignsTypeNothing() {
        try (Journey journey = inADrill()) {
            journey.type("seven;:!×÷=äß李;");
            assertInstanceOf(Phase.HandsOff.class, journey.drill().orElseThrow().phase());
            journey.rest(1500).keys("Enter").rest(100);
            assertEquals("", asking(journey).typed());
            assertEquals(2, typed().size());
        }
    }

    @Test
    void digitsOfOtherScriptsCount() {
        try (Journey journey = inADrill()) {
            String right = Integer.toString(asking(journey).prompt().expected());
            // Devanagari digits (Unicode, block 0900).
            right.chars().forEach(c -> journey.type(Character.toString((char) (c - '0' + 0x0966))));
            journey.keys("Enter").rest(700);
            assertEquals(right, typed().get(2));
        }
    }

    @Test
    void ofTwelveDigitsTheFirstFourStay() {
        try (Journey journey = inADrill()) {
            journey.type("123456789012");
            assertEquals("1234", asking(journey).typed());
            journey.keys("Enter");
            assertEquals("1234", typed().get(2));
        }
    }

    @Test
    void controlCInAQuestionEndsTheProgramAndKeepsWhatWasAnswered() {
        try (Journey journey = inADrill()) {
            journey.keys("4 Ctrl-C");
            assertFalse(journey.isGoing());
        }
        assertEquals(2, typed().size());
        assertEquals(
                2,
                Rows.column(file(), "SELECT position FROM answer_log WHERE outcome = 'right'")
                        .size());
    }

    @Test
    void aTerminalThatGoesAwayEndsTheProgramAndKeepsWhatWasAnswered() {
        try (Journey journey = inADrill()) {
            journey.keys("4").hangUp();
            assertFalse(journey.isGoing());
        }
        assertEquals(2, typed().size());
    }

    @Test
    void aWindowThatChangesInAQuestionLosesNothing() {
        try (Journey journey = inADrill()) {
            String right = Integer.toString(asking(journey).prompt().expected());
            journey.type("9");
            for (int[] size : new int[][] {{60, 20}, {200, 60}, {41, 12}, {100, 30}, {80, 24}}) {
                journey.size(size[0], size[1]);
                assertEquals("9", asking(journey).typed(), size[0] + " x " + size[1]);
            }
            journey.keys("Backspace").type(right).keys("Enter");
            assertEquals(right, typed().get(2));
            assertEquals(List.of("1"), Rows.column(file(), "SELECT erasures FROM answer_log WHERE position = 3"));
        }
    }

    @Test
    void aWindowThatIsTooSmallPausesAndTheQuestionComesBack() {
        try (Journey journey = inADrill()) {
            var prompt = asking(journey).prompt();
            journey.size(30, 8);
            assertTrue(journey.picture().contains("too small"), journey.picture());
            assertInstanceOf(Phase.Paused.class, journey.drill().orElseThrow().phase());
            journey.rest(60_000).size(80, 24).keys("Enter").rest(100);
            assertEquals(prompt, asking(journey).prompt());
            journey.answer();
            assertEquals(3, typed().size());
            assertEquals(List.of(""), Rows.column(file(), "SELECT whole_ms FROM answer_log WHERE position = 3"));
        }
    }

    @ParameterizedTest
    @CsvSource({"1,1", "2,60", "200,1", "39,24", "80,11"})
    void noWindowIsSoSmallThatThePagesBreak(int columns, int rows) {
        Practised.children(folder, "Mina", "Ivo");
        try (Journey journey = open()) {
            for (String keys :
                    List.of("Down", "3", "Esc", "4", "1", "m", "6", "Esc", "Esc", "Enter", "Esc", "Esc", "Esc")) {
                journey.size(columns, rows).keys(keys).size(80, 24);
            }
            assertTrue(journey.isGoing());
        }
    }

    @Test
    void aFileThatFailsIsToldCalmlyUntilItWorksAgain() {
        try (Journey journey = inADrill()) {
            Rows.change(file(), "CREATE TRIGGER full BEFORE INSERT ON answer BEGIN SELECT RAISE(FAIL, 'no room'); END");
            String right = Integer.toString(asking(journey).prompt().expected());
            journey.type(right).keys("Enter").rest(500);
            assertTrue(journey.picture().contains("It is not your fault."), journey.picture());
            journey.keys("Enter 5 x Enter").rest(30_000);
            assertTrue(journey.picture().contains("It is not your fault."), journey.picture());
            assertEquals(
                    2,
                    journey.drill()
                            .orElseThrow()
                            .progress()
                            .drill()
                            .orElseThrow()
                            .size());
            Rows.change(file(), "DROP TRIGGER full");
            journey.keys("Enter").rest(700);
            assertFalse(journey.picture().contains("It is not your fault."), journey.picture());
            assertEquals(right, typed().get(2));
            journey.answer();
            assertEquals(4, typed().size());
        }
    }

    @Test
    void stoppingWhileTheFileFailsSaysNotThatAllIsKept() {
        try (Journey journey = inADrill()) {
            Rows.change(file(), "CREATE TRIGGER full BEFORE INSERT ON answer BEGIN SELECT RAISE(FAIL, 'no room'); END");
            journey.type("1").keys("Enter Esc").rest(100);
            assertFalse(journey.picture().contains("Everything is kept"), journey.picture());
            assertTrue(journey.picture().contains("1 answer is not kept yet"), journey.picture());
            journey.keys("Esc").rest(100);
            assertTrue(journey.drill().isEmpty() && journey.isGoing());
            assertEquals(2, typed().size());
        }
    }

    @Test
    void aDrillThatCannotBeginIsToldToo() {
        Practised.children(folder, "Mina");
        try (Journey journey = open()) {
            Rows.change(file(), "CREATE TRIGGER full BEFORE INSERT ON drill BEGIN SELECT RAISE(FAIL, 'no room'); END");
            journey.keys("Enter Enter").rest(100);
            assertTrue(journey.picture().contains("fetch a grown-up"), journey.picture());
            Rows.change(file(), "DROP TRIGGER full");
            journey.keys("Enter").rest(100);
            journey.answer();
            assertEquals(1, typed().size());
        }
    }

    @Test
    void aFileThatAnotherProgramHoldsIsWaitedForAndThenTold() throws java.sql.SQLException {
        try (Journey journey = inADrill();
                var other = java.sql.DriverManager.getConnection("jdbc:sqlite:" + file());
                var statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            String right = Integer.toString(asking(journey).prompt().expected());
            journey.type(right).keys("Enter");
            // A long path breaks the line elsewhere.
            String told = journey.picture().replaceAll("\\s+", " ");
            assertTrue(told.contains("another program is using the file"), told);
            statement.execute("ROLLBACK");
            journey.keys("Enter").rest(700);
            assertEquals(right, typed().get(2));
        }
    }

    /** Forty columns and twelve rows are the least; digits that stood there stand again, and no time is kept. */
    @Test
    void aWindowMadeTooSmallKeepsTheDigitsThatWereTyped() {
        Path file = Practised.children(folder, "Mina");
        try (Journey journey = new Journey(file, Practised.BEGAN, 80, 24, true)) {
            journey.keys("Enter Enter").rest(100).answer();
            while (fourfold.screens.DigitReader.read(journey.picture())
                            .orElse("")
                            .length()
                    != 2) {
                journey.answer();
            }
            String number = fourfold.screens.DigitReader.read(journey.picture()).orElseThrow();
            journey.rest(700).keys(number.substring(0, 1)).size(39, 12);
            assertTrue(journey.picture().contains("too small"), journey.picture());
            journey.size(80, 24).keys("Enter").rest(100);
            journey.keys(number.substring(1) + " Enter").rest(100);
            assertEquals(
                    List.of(number + "||"),
                    Rows.column(
                            file,
                            "SELECT typed || '|' || COALESCE(first_key_ms, '') || '|' || COALESCE(whole_ms, '') FROM"
                                    + " answer_log ORDER BY position DESC LIMIT 1"));
        }
    }
}
