// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.facts.MissingFactor;
import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.progress.Setting;
import fourfold.screens.DigitReader;
import fourfold.terminal.WindowSize;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a child's side that works in its parts and not at the keys: keys in, pictures out, rows in the file. */
class ChildJourneyTest {
    @TempDir
    private static Path sample;

    private static Instant next = Instant.EPOCH;

    @TempDir
    private Path folder;

    @BeforeAll
    static void thirtyDrillsLater() {
        next = Sample.fill(sample.resolve("sample.db"));
    }

    /** The sample's child with choices of the parent, at the first question from memory. */
    private Journey practised(String... choices) throws Exception {
        Path file = folder.resolve("sample.db");
        Files.copy(sample.resolve("sample.db"), file);
        Journey journey = new Journey(file, next, 80, 24, true);
        Child child = journey.home().children().list().get(0);
        for (String choice : choices) {
            String[] parts = choice.split("=");
            journey.home().steering().keep(child, List.of(new ParentAction.Choose(parts[0], parts[1])), journey.now());
        }
        return journey;
    }

    private static Journey until(Journey journey, Predicate<Drill> there) {
        for (int i = 0; i < 300 && !there.test(journey.drill().orElseThrow()); i++) {
            journey.give(0);
        }
        assertTrue(there.test(journey.drill().orElseThrow()), journey.picture());
        return journey;
    }

    private static boolean isFromMemory(Drill drill) {
        return drill.phase() instanceof Asking asking && asking.purpose().isFromMemory();
    }

    /** One of the two shelves of a drill on 80 columns and 24 rows, alone on a sheet. */
    private static String shelf(Journey journey, int number) {
        List<String> rows = journey.picture().lines().toList();
        return String.join("\n", rows.subList(3 + 6 * number, 8 + 6 * number));
    }

    private static Asking asking(Journey journey) {
        return (Asking) journey.drill().orElseThrow().phase();
    }

    private static void shows(Journey journey, String words) {
        assertTrue(journey.picture().contains(words), "\"" + words + "\" is not shown:\n" + journey.picture());
    }

    /** From the first page to the end of the drill with nothing but the keys of a number pad, or of one side. */
    @ParameterizedTest
    @CsvSource({"keypad, Enter, -, *", "keypad, +, ., /", "left, Space, x, Esc", "right, Enter, Backspace, p"})
    void oneHandIsEnough(String keys, String ready, String erase, String pause) throws Exception {
        try (Journey journey = practised("keys=" + keys)) {
            journey.keys("1");
            shows(journey, "Hello ");
            journey.keys(ready).rest(100);
            until(journey, ChildJourneyTest::isFromMemory);
            String wrong = Integer.toString(asking(journey).prompt().expected() + 1);
            journey.type(wrong);
            for (int i = 0; i < wrong.length(); i++) {
                journey.keys(erase);
            }
            assertEquals("", asking(journey).typed());
            String expected = Integer.toString(asking(journey).prompt().expected());
            journey.type(expected).keys(ready);
            assertTrue(journey.drill().orElseThrow().phase() instanceof Phase.Right, journey.picture());
            journey.rest(700);
            journey.keys(pause);
            shows(journey, "Pause");
            journey.keys(ready).rest(100);
            assertFalse(journey.picture().contains("Pause"), journey.picture());
            journey.keys(pause + " " + pause);
            shows(journey, "Everything is kept");
            journey.keys(ready);
            shows(journey, "Who wants to practise?");
        }
    }

    @Test
    void theFootNamesTheKeysTheParentChose() throws Exception {
        try (Journey journey = practised("keys=keypad")) {
            journey.keys("1 Enter").rest(100);
            until(journey, ChildJourneyTest::isFromMemory);
            shows(journey, "Enter show me   * pause   ? keys");
            shows(journey.keys("3"), "Enter ready   - take back   * pause   ? keys");
        }
    }

    @Test
    void aHiddenFactorIsAskedInBigDigitsAndStandsInTheLog() throws Exception {
        try (Journey journey = practised("missing=yes")) {
            journey.keys("1 Enter").rest(100);
            until(journey, d -> d.phase() instanceof Asking a && a.prompt() instanceof MissingFactor && !a.isInView());
            MissingFactor hidden = (MissingFactor) asking(journey).prompt();
            assertEquals(
                    hidden.known() + "×?=" + hidden.product(),
                    DigitReader.read(journey.picture()).orElseThrow());
            journey.give(1);
            shows(journey, "The missing number is " + hidden.expected() + ". Type it once.");
            assertEquals(
                    hidden.known() + "×" + hidden.expected() + "=" + hidden.product(),
                    DigitReader.read(shelf(journey, 1)).orElseThrow());
            journey.give(0);
            String export = CommandRun.of(folder.resolve("sample.db"), "export", "answers")
                    .out();
            assertTrue(
                    export.lines().anyMatch(l -> l.contains("factor") && l.contains("introduce")),
                    export.lines().limit(1).toList().toString());
        }
    }

    @Test
    void aNeighboursAnswerIsToldCalmlyWithThePictureAndAWay() throws Exception {
        try (Journey journey = practised()) {
            journey.keys("1 Enter").rest(100);
            until(
                    journey,
                    d -> isFromMemory(d)
                            && d.phase().question().orElseThrow().operation() == fourfold.facts.Operation.MULTIPLY
                            && d.phase().question().orElseThrow().left() > 2
                            // Of a square the neighbour could be named either way.
                            && !d.phase().question().orElseThrow().family().isSquare());
            fourfold.facts.Question asked = asking(journey).question().orElseThrow();
            journey.give(-asked.right());
            int own = asked.expected() - asked.right();
            String fact = asked.left() + " × " + asked.right();
            shows(
                    journey,
                    (asked.left() - 1) + " × " + asked.right() + " is the next one down: " + own + ". You were asked "
                            + fact + ".");
            String question = asked.left() + "×" + asked.right() + "=";
            assertEquals(question + own, DigitReader.read(shelf(journey, 0)).orElseThrow(), "the child's own answer");
            assertEquals(
                    question + asked.expected(),
                    DigitReader.read(shelf(journey, 1)).orElseThrow());
            shows(journey, "It goes like this. Type it once.");
            assertFalse(journey.picture().toLowerCase(java.util.Locale.ROOT).contains("wrong"), journey.picture());
            journey.give(0);
            assertTrue(isFromMemory(journey.drill().orElseThrow()), journey.picture());
        }
    }

    /** Missed twice it rests: it does not come a third time, though the drill goes on for ten minutes. */
    @Test
    void aFactMissedTwiceRestsUntilTheNextDrill() throws Exception {
        try (Journey journey = practised()) {
            journey.keys("1 0 Enter").rest(100);
            until(journey, ChildJourneyTest::isFromMemory);
            int trace = asking(journey).question().orElseThrow().traceIndex();
            int times = 0;
            while (!journey.drill().orElseThrow().isFinished()) {
                boolean it = isFromMemory(journey.drill().orElseThrow())
                        && asking(journey).question().orElseThrow().traceIndex() == trace;
                times += it ? 1 : 0;
                journey.give(it ? 1 : 0);
            }
            assertEquals(2, times);
            shows(journey, "Next time once more: ");
        }
    }

    @Test
    void theMinuteEndsWithTheChildsOwnGraph() throws Exception {
        try (Journey journey = practised("timing=minute")) {
            journey.keys("1 5 Enter").rest(100);
            until(journey, d -> d.phase() instanceof Phase.OneMinute);
            shows(journey, "One quiet minute");
            shows(journey, "Esc: leave it out");
            journey.keys("Enter").rest(100);
            String countdown = journey.picture();
            journey.rest(3000);
            assertEquals(countdown, journey.picture(), "no clock runs on the screen");
            until(journey, Drill::isFinished);
            shows(journey, " in 60 seconds: ");
            shows(journey, "Press Enter.");
            journey.rest(1500).keys("Enter");
            shows(journey, "Your minutes so far: digits right");
            journey.keys("Enter");
            shows(journey, "Who wants to practise?");
            assertTrue(Integer.parseInt(Rows.column(
                                    folder.resolve("sample.db"),
                                    "SELECT COUNT(*) FROM answer_log WHERE purpose = 'timed'")
                            .get(0))
                    > 10);
        }
    }

    /** Hebrew and Arabic names, written as escapes so that this file keeps its own order. */
    @ParameterizedTest
    @ValueSource(strings = {"\u05d3\u05e0\u05d4", "\u0633\u0627\u0631\u0629", "Jos\u00e9 \u674e"})
    void aNameFromRightToLeftBreaksNoPage(String name) {
        Path file = folder.resolve("family.db");
        try (Journey journey = new Journey(file, Instant.parse("2026-03-02T16:00:00Z"), 60, 20, true)) {
            journey.keys("Enter").type(name).keys("Enter");
            shows(journey, "Who wants to practise?");
            shows(journey.keys("Enter"), "Hello ");
            assertTrue(
                    journey.picture().lines().anyMatch(l -> l.strip().startsWith("Hello ") && l.endsWith(".")),
                    journey.picture());
            journey.keys("Enter").rest(100);
            shows(journey, "Esc pause");
            assertEquals("", journey.picture().lines().findFirst().orElseThrow());
            journey.keys("Esc Esc");
            shows(journey, "Everything is kept.");
            assertEquals(List.of(name), Rows.column(file, "SELECT name FROM child"));
        }
    }

    @Test
    void theStairsNeverShrink() throws Exception {
        try (Journey journey = practised()) {
            Child child = journey.home().children().list().get(0);
            int begun = journey.home().records().lifetime(child).begun();
            int[] before = shades(journey, child);
            for (fourfold.facts.Family family : fourfold.facts.Families.all()) {
                journey.home().steering().keep(child, List.of(new ParentAction.Reset(family)), journey.now());
            }
            journey.home().steering().keep(child, List.of(new ParentAction.Choose("quick", "2")), journey.now());
            journey.keys("1 Enter").rest(100);
            for (int i = 0; i < 20; i++) {
                journey.give(1);
            }
            int[] after = shades(journey, child);
            for (int i = 0; i < before.length; i++) {
                assertTrue(after[i] >= before[i], "cell " + i);
            }
            assertTrue(begun > 10 && journey.home().records().lifetime(child).begun() >= begun, "begun: " + begun);
        }
    }

    private static int[] shades(Journey journey, Child child) {
        fourfold.insight.LifetimeProgress filling = journey.home().records().lifetime(child);
        return fourfold.facts.Families.all().stream().mapToInt(filling::stones).toArray();
    }

    @Test
    void theWindowComesBackInItsSizeWithTheLettersTheParentChose() {
        Path file = Practised.children(folder, "Mina", "Pip");
        Environment world = CommandRun.world(
                file,
                true,
                new java.io.BufferedReader(new java.io.StringReader("")),
                new java.io.StringWriter(),
                new java.io.StringWriter(),
                Environment::systemClock);
        try (Home home = Home.open(world, java.util.Optional.of(file), false)) {
            assertEquals(WindowSize.USUAL, home.settings().window());
            home.settings().rememberWindow(new WindowSize(100, 31, 24));
            Child pip = home.children().list().get(1);
            home.steering()
                    .keep(
                            pip,
                            List.of(new ParentAction.Choose(Setting.LETTERS.key(), "28")),
                            home.moments().now());
        }
        try (Home home = Home.open(world, java.util.Optional.of(file), false)) {
            assertEquals(new WindowSize(100, 31, 28), home.settings().window());
        }
    }
}
