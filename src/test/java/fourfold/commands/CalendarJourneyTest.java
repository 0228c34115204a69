// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Home;
import fourfold.log.AwayPractice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a page of the calendar that can't be found, read or taken back. {@code -Dpictures=write} writes them anew. */
class CalendarJourneyTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("sample.db");
    }

    private Journey opened(int columns, int rows, boolean unicode) {
        Instant next = Sample.fill(file());
        return new Journey(file(), next, columns, rows, unicode).keys("3 k");
    }

    private static void shows(Journey journey, String words) {
        assertTrue(journey.picture().contains(words), () -> "\"" + words + "\" is not shown:\n" + journey.picture());
    }

    private List<String> acts() {
        return Rows.column(
                file(),
                "SELECT kind || ' ' || detail FROM act WHERE kind IN ('calendar', 'taught', 'away', 'undo')"
                        + " ORDER BY nr");
    }

    @Test
    void aYearIsPlannedWithFewKeysAndEachIsTakenBack() {
        try (Journey journey = opened(80, 24, true)) {
            shows(journey, "no start yet");
            int before = acts().size();
            journey.keys("b");
            shows(journey, "England's published order");
            shows(journey, "week 26");
            assertEquals(before + 2, acts().size(), "a start and the tables");
            journey.keys("u");
            shows(journey, "no start yet");
            assertFalse(journey.picture().contains("week 26"), journey::picture);
            journey.keys("Right");
            shows(journey, "This is week 1.");
            journey.keys("Down 1 2 4");
            shows(journey, "Mon Tue Thu");
            journey.keys("Down o");
            shows(journey, "off");
            journey.keys("o n");
            shows(journey, "Note: _");
            journey.type("fractions").keys("Enter");
            shows(journey, "fractions");
            journey.keys("Down Right");
            shows(journey, "yes");
        }
    }

    @Test
    void aTableGetsItsWeeksAndIsTaughtTodayByOneKey() {
        try (Journey journey = opened(80, 24, true)) {
            journey.keys("Right");
            for (int i = 0; i < 12; i++) {
                journey.keys("Down");
            }
            shows(journey, "Multiplication of table 7: by progress.");
            journey.keys("Right Right");
            shows(journey, "◄week 2►");
            journey.keys("Enter Left");
            shows(journey, "◄when taught►");
            shows(journey, "Until then 7 × ? = 56");
            journey.keys("t");
            shows(journey, "Division of table 7 was taught: its sign comes from today.");
            assertEquals("taught 7 divide", acts().get(acts().size() - 1));
            journey.keys("u");
            shows(journey, "◄when taught►");
            journey.keys("Esc");
            shows(journey, "of 55 families fluent");
        }
    }

    @ParameterizedTest
    @CsvSource({"80, 24", "60, 20"})
    void singleDaysGetNotesTicksAndSpansOffByKeys(int columns, int rows) {
        try (Journey journey = opened(columns, rows, true)) {
            journey.keys("Down Down Enter");
            shows(journey, "Day");
            int before = acts().size();
            journey.keys("c");
            shows(journey, "● cards");
            assertTrue(acts().get(before).startsWith("away "), acts().get(before));
            journey.keys("u");
            assertFalse(journey.picture().contains("● cards"), journey::picture);
            journey.keys("Right n").type("museum").keys("Enter");
            shows(journey, "museum");
            assertTrue(acts().get(acts().size() - 1).contains("day"), acts().get(acts().size() - 1));
            journey.keys("g");
            shows(journey, "has not come yet");
            // Ten days off from here, marked with four keys beside the arrows.
            journey.keys("s").keys("Right Right Right Right Right Right Right Right Right");
            shows(journey, " to ");
            journey.keys("o");
            shows(journey, "off");
            String kept = acts().get(acts().size() - 1);
            assertTrue(kept.matches("calendar off.*\\.\\..*"), kept);
            journey.keys("o");
            assertTrue(acts().get(acts().size() - 1).startsWith("calendar on"), "the last day alone is no longer off");
            journey.keys("Enter");
            shows(journey, "Week of");
            // Three weeks, begun with the last.
            journey.keys("s Left Left o");
            kept = acts().get(acts().size() - 1);
            Matcher days = Pattern.compile("calendar off=(\\S+)\\.\\.(\\S+)").matcher(kept);
            assertTrue(days.matches(), kept);
            assertEquals(20, ChronoUnit.DAYS.between(LocalDate.parse(days.group(1)), LocalDate.parse(days.group(2))));
        }
    }

    /** Whether it was ticked off by a key or by the command, the page's undo takes it back, and the day is open again. */
    @Test
    void undoTakesBackATickByKeyAndOneByCommand() {
        Instant next = Sample.fill(file());
        LocalDate today = LocalDate.ofInstant(next, ZoneId.of("Europe/Berlin"));
        CommandRun ticked = CommandRun.of(file(), "away", "2026-03-02", "game");
        assertEquals(0, ticked.code(), ticked.err());
        try (Journey journey = new Journey(file(), next, 80, 24, true)) {
            journey.keys("3 k Down Down Enter c");
            assertEquals(Set.of(AwayPractice.CARDS), away(journey).get(today));
            journey.keys("u");
            shows(journey, "Undone");
            assertFalse(away(journey).containsKey(today));
            assertEquals(1, away(journey).size(), "the command's tick is still there");
            journey.keys("u");
            assertEquals(Map.of(), away(journey));
        }
        assertEquals(2, acts().stream().filter(a -> a.startsWith("undo")).count());
        assertFalse(CommandRun.of(file(), "calendar").out().contains("practised with"));
    }

    private static Map<LocalDate, Set<AwayPractice>> away(Journey journey) {
        Home home = journey.home();
        return home.records()
                .levels(home.children().list().get(0))
                .steering()
                .calendar()
                .away();
    }

    @Test
    void aWeekNeedsAYearWithAStart() {
        try (Journey journey = opened(80, 24, true)) {
            int before = acts().size();
            journey.keys("Up Right");
            shows(journey, "First give the school year a start");
            assertEquals(before, acts().size());
        }
    }

    @ParameterizedTest
    @CsvSource({"80, 24, true", "60, 20, true", "80, 24, false"})
    void thePageLooksAsItDid(int columns, int rows, boolean unicode) throws IOException {
        StringBuilder pictures = new StringBuilder();
        try (Journey journey = opened(columns, rows, unicode)) {
            take(pictures, "the calendar, empty", journey);
            take(pictures, "England's order", journey.keys("b"));
            take(pictures, "days", journey.keys("Down 1 2 4 5"));
            take(pictures, "a week off", journey.keys("Down Right Right o"));
            take(pictures, "a note", journey.keys("Right n").type("fractions"));
            journey.keys("Enter");
            take(pictures, "a division taught today", journey.keys("Down Down Enter t"));
            journey.keys("Esc m Up");
            take(pictures, "more, by its last line", journey);
            take(pictures, "from there", journey.keys("Enter"));
        }
        String name = "calendar-" + columns + "x" + rows + (unicode ? "" : "-ascii") + ".txt";
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(FOLDER.resolve(name), pictures);
        }
        assertEquals(Files.readString(FOLDER.resolve(name)), pictures.toString());
    }

    private static void take(StringBuilder pictures, String title, Journey journey) {
        pictures.append("---- ").append(title).append('\n').append(journey.picture());
    }
}
