// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against an act of the parent that no page shows, and a drill that asks nothing and does not say why. */
class ActsShownTest {
    private static final Words WORDS = Words.of(Locale.ENGLISH);

    @TempDir
    private Path folder;

    private Path sample() {
        Path file = folder.resolve("sample.db");
        Sample.fill(file);
        return file;
    }

    private static void shows(Journey journey, String words) {
        String picture = journey.picture().replaceAll("\\s+", " ");
        assertTrue(picture.contains(words.strip()), () -> "\"" + words + "\" is not shown:\n" + journey.picture());
    }

    private static String said(Path file, String... arguments) {
        CommandRun run = CommandRun.of(file, arguments);
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    @ParameterizedTest
    @CsvSource({"80,24", "60,20"})
    void thatKeysActOnAWholeTableIsShownUntilTheyNoLongerDo(int columns, int rows) {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Journey journey = new Journey(file, next, columns, rows, true)) {
            journey.keys("3 t");
            shows(journey, "keys f h r act on the table of ");
            journey.keys("f");
            shows(journey, "keys f h r act on the table of ");
            journey.keys("Up");
            shows(journey, "keys f h r act on the table of ");
            journey.keys("t");
            shows(journey, "keys f h r act on all families");
            journey.keys("t");
            assertFalse(journey.picture().contains("act on"), journey::picture);
        }
    }

    @ParameterizedTest
    @CsvSource({"80,24", "60,20"})
    void anOpenedTableIsShownOnTheStairsOnAFamilysPageAndOnThePlan(int columns, int rows) {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        said(file, "open", "9");
        said(file, "close", "7");
        try (Journey journey = new Journey(file, next, columns, rows, true)) {
            journey.keys("3");
            assertTrue(journey.picture().lines().anyMatch(l -> l.strip().startsWith("9>")), journey::picture);
            assertTrue(journey.picture().lines().anyMatch(l -> l.strip().startsWith("7x")), journey::picture);
            journey.keys("p");
            shows(journey, "Opened: table 9. Closed: table 7.");
            journey.keys("Esc");
            for (int i = 0; i < 10; i++) {
                journey.keys("Down");
            }
            journey.keys("Up");
            shows(journey, "table 9: opened");
            journey.keys("Enter");
            shows(journey, "Opened: table 9.");
        }
    }

    /** On the stairs for a week, on a family's page and in the year for good. */
    @ParameterizedTest
    @CsvSource({"80, 24", "60, 20"})
    void aTableThatWasTaughtIsShownOnTheStairsOnAFamilysPageAndInTheYear(int columns, int rows) {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        said(file, "calendar", "--start", "2026-01-05");
        said(file, "taught", "9");
        String day = WORDS.date(LocalDate.ofInstant(CommandRun.NOW, ZoneOffset.UTC));
        assertTrue(said(file, "year").contains("The 9 times table: multiplication from " + day), said(file, "year"));
        assertTrue(said(file, "plan", "--runs", "0").contains("Taught lately: table 9."));
        assertTrue(said(file, "family", "4x9", "--plain").contains("Table 9 was taught on " + day + "."));
        try (Journey journey = new Journey(file, next, columns, rows, true)) {
            journey.keys("3");
            assertTrue(journey.picture().lines().anyMatch(l -> l.strip().startsWith("9>")), journey::picture);
            journey.keys("Down Down Down Down Down Down Down Down Down Down Up");
            shows(journey, "table 9: taught lately");
            journey.keys("Enter");
            shows(journey, "Table 9 was taught on");
            journey.keys("Esc y");
            shows(journey, "9: × " + WORDS.dayOfYear(LocalDate.ofInstant(CommandRun.NOW, ZoneOffset.UTC)));
        }
        try (Journey journey = new Journey(file, next.plus(Duration.ofDays(8)), columns, rows, true)) {
            journey.keys("3");
            assertFalse(journey.picture().contains("9>"), journey::picture);
        }
    }

    @Test
    void theCommandsTellWhatIsInFocusOnHoldOpenedAndBegunAgain() {
        Path file = Practised.once(folder);
        said(file, "focus", "8");
        said(file, "hold", "2x3");
        said(file, "reset", "5");
        assertEquals("Table 9 is open: its families come next.\n", said(file, "open", "9"));
        assertEquals("Table 7 is closed: no new family comes from it.\n", said(file, "close", "7"));
        for (String page : new String[] {"grid", "plan"}) {
            String told = page.equals("plan") ? said(file, page, "--runs", "0") : said(file, page);
            assertTrue(told.contains("In focus: the table of 8."), told);
            assertTrue(told.contains("On hold: 2 × 3.") || told.contains("On hold: 2 x 3."), told);
            assertTrue(told.contains("To begin again: the table of 5."), told);
            assertTrue(told.contains("Opened: table 9."), told);
            assertTrue(told.contains("Closed: table 7."), told);
        }
        String family = said(file, "family", "7x9");
        assertTrue(family.contains("table 9: opened") && family.contains("table 7: closed"), family);
        String history = said(file, "history");
        assertTrue(history.contains("9") && history.lines().count() == 5, history);
    }

    /** The median of the last ten is what the stairs, a family's page and the command tell. */
    @Test
    void theThinkingTimeOfAFactIsTheSameOnEveryPage() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            Matcher stairs = Pattern.compile("product: ([0-9.]+) s to think")
                    .matcher(journey.keys("3").picture());
            assertTrue(stairs.find(), journey::picture);
            Matcher chosen = Pattern.compile("Shakiest now: (\\d+) × (\\d+)").matcher(journey.picture());
            assertTrue(chosen.find(), journey::picture);
            String family = chosen.group(1) + "x" + chosen.group(2);
            journey.keys("Enter");
            shows(journey, " " + stairs.group(1) + " (");
            String told = said(file, "family", family);
            assertTrue(told.contains(stairs.group(1) + " s"), told);
        }
    }

    @ParameterizedTest
    @CsvSource({"open", "close"})
    void whatIsNoTableIsNotOpenedOrClosed(String command) {
        CommandRun run = CommandRun.of(sample(), command, "11");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("a table is a number from 1 to 10, not 11"), run.err());
        assertTrue(CommandRun.of(sample(), command, "6x7")
                .err()
                .contains("a table is a number from 1 to 10, not \"6x7\""));
    }

    @Test
    void aDrillWithEverythingOnHoldSaysWhyItAsksNothing() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        said(file, "hold", "all", "--yes");
        assertTrue(said(file, "grid").contains("Everything is on hold: a drill asks nothing until you end that."));
        String drill = CommandRun.typed(file, "\n\n\n", "drill", "--plain").out();
        assertTrue(drill.contains("All families are resting. A grown-up can wake them."), drill);
        assertFalse(drill.contains("Coming soon"), drill);
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            shows(journey.keys("3"), "Everything is on hold: a drill asks nothing until you end that.");
        }
    }

    @Test
    void whatCannotBeRestoredIsNotPromised() {
        Path file = sample();
        CommandRun run = CommandRun.of(file, "restore", "nope");
        assertEquals(1, run.code());
        assertFalse(run.out().contains("--yes"), run.out());
        assertEquals(CommandRun.of(file, "restore", "nope", "--yes").err(), run.err());
    }

    /** A table is ten acts in the log and says so; one is one. */
    @Test
    void whatIsCountedIsCountedInPlainEnglish() {
        Path file = Practised.once(folder);
        said(file, "focus", "7x8");
        String one = said(file, "salvage", folder.resolve("one.db").toString());
        assertTrue(one.contains("1 change by a parent"), one);
        assertTrue(one.contains("1 drill,"), one);
        said(file, "hold", "7");
        String more = said(file, "salvage", folder.resolve("more.db").toString());
        assertTrue(more.contains("11 changes by parents (a table counts once for each family)"), more);
    }

    /** On the page and in the settings five to ten; the command lets a grown-up choose otherwise. */
    @Test
    void howLongADrillLastsHasOneRangeForChildrenAndOneForTheCommand() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("1 Left Left Left Left Left Left Left");
            shows(journey, "[5]");
            journey.keys("Right Right Right Right Right Right Right Right Right");
            shows(journey, "[10]");
        }
        assertEquals(2, CommandRun.of(file, "settings", "minutes", "11").code());
        CommandRun tooLong = CommandRun.of(file, "drill", "--plain", "--minutes", "31");
        assertEquals(2, tooLong.code());
        assertTrue(tooLong.err().contains("lasts 1 to 30"), tooLong.err());
        String help = said(file, "help", "drill").replaceAll("\\s+", " ");
        assertTrue(help.contains("1 to 30") && help.contains("5 to 10"), help);
    }

    @Test
    void aFamilysPageAndTheSettingsSayWordsAndNoShorthand() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("3 Enter");
            shows(journey, "how likely a quick right answer is now, in a week, in a month");
            String picture = journey.picture();
            assertFalse(picture.matches("(?s).*\\d d\\b.*|.*/30d.*"), picture);
            journey.keys("Esc s Down");
            shows(journey, "Usual: within 3 s.");
        }
    }
}
