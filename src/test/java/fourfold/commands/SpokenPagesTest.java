// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against a parent who hears the pages and can't steer by them: where the household wants sentences, each page says what
 * it would draw, and its keys are the same.
 */
class SpokenPagesTest {
    private static final Pattern NAMED = Pattern.compile("Chosen: (\\d+) times (\\d+) is (\\d+): (.*?)\\.");

    @TempDir
    private Path folder;

    private Path file = Path.of("");

    private Instant sample() {
        file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        assertEquals(
                0, CommandRun.of(file, "settings", "--parents", "sentences").code());
        return next;
    }

    /** Everything a page says, from its beginning to its end. */
    private static String heard(Journey journey) {
        List<String> screens = new ArrayList<>();
        String before = "";
        while (!journey.picture().equals(before)) {
            before = journey.picture();
            assertFalse(before.matches("(?s).*[■□▲█▄│─►◄●↑↓→×÷~].*"), before);
            String lines = before.strip();
            lines = lines.substring(0, Math.max(0, lines.lastIndexOf('\n')));
            assertFalse(lines.lines().anyMatch(l -> l.strip().contains("  ")), before);
            screens.add(before);
            journey.keys("Space");
        }
        return String.join("\n", screens).replaceAll("\\s+", " ");
    }

    private static Matcher chosen(Journey journey) {
        Matcher chosen = NAMED.matcher(journey.picture().replaceAll("\\s+", " "));
        assertTrue(chosen.find(), journey::picture);
        return chosen;
    }

    @ParameterizedTest
    @CsvSource({"80,24", "60,20"})
    void theShakiestIsFoundPractisedMoreAndTakenBackAndTheYearIsReadBySentencesAlone(int columns, int rows) {
        try (Journey journey = new Journey(file(), sample(), columns, rows, true)) {
            String grid = heard(journey.keys("3"));
            Matcher shakiest =
                    Pattern.compile("The shakiest is (\\d+ times \\d+)\\.").matcher(grid);
            assertTrue(shakiest.find(), grid);
            assertTrue(grid.contains("Keys: arrows move;") && grid.contains("f focus;"), grid);
            journey.keys("Right Left");
            String family =
                    chosen(journey).group(1) + " times " + chosen(journey).group(2);
            assertFalse(chosen(journey).group(4).contains("in focus"), journey::picture);
            journey.keys("f");
            assertTrue(chosen(journey).group(4).contains("in focus"), journey::picture);
            journey.keys("Enter");
            String page = heard(journey);
            assertTrue(page.contains("in focus") && page.contains("answers right"), page);
            journey.keys("Esc u");
            assertFalse(chosen(journey).group(4).contains("in focus"), journey::picture);
            assertTrue(grid.contains(family.substring(0, 1)), grid);
            String year = heard(journey.keys("y"));
            assertTrue(year.contains("Days done: ") && year.contains("The 7 times table: multiplication"), year);
            journey.keys("Esc");
            assertTrue(chosen(journey).group(4).length() > 0);
        }
    }

    private Path file() {
        return folder.resolve("sample.db");
    }

    @Test
    void whatThePagesSayIsWhatTheCommandsSay() {
        Instant next = sample();
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("3");
            said("rates --plain", heard(journey.keys("m 5")));
            said("history --plain", heard(journey.keys("Esc m 7")));
            said("calendar --plain", heard(journey.keys("Esc Esc k")));
        }
    }

    private void said(String command, String page) {
        CommandRun run = CommandRun.of(file, command.split(" "));
        run.out()
                .lines()
                .filter(line -> !line.startsWith("To write into it"))
                .forEach(line -> assertTrue(page.contains(line.strip()), line + "\n" + page));
    }

    @Test
    void settingsAndCalendarAreChangedByTheSameKeys() {
        Instant next = sample();
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("3 s");
            assertTrue(heard(journey).startsWith(" Chosen: Minutes a drill: 8 minutes."), journey::picture);
            journey.keys("Left");
            assertTrue(heard(journey).contains("Chosen: Minutes a drill: 7 minutes."), journey::picture);
            journey.keys("u");
            assertTrue(heard(journey).contains("Chosen: Minutes a drill: 8 minutes."), journey::picture);
            journey.keys("Esc k Right");
            assertTrue(heard(journey).contains("Chosen: School year from "), journey::picture);
            journey.keys("Down Down n z o o");
            assertTrue(heard(journey).contains("zoo"), journey::picture);
            journey.keys("Enter");
            assertTrue(heard(journey).contains("zoo"), journey::picture);
        }
    }

    @Test
    void itIsSetForAllOnAPageAndTakenBack() {
        file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            journey.keys("3 m");
            String household = Words.english().say("more.household");
            while (!journey.picture().matches("(?s).*(►|>) *(\\d+ +)?" + household + ".*")) {
                journey.keys("Down");
            }
            journey.keys("Enter Down Down Down Down Right");
            assertTrue(journey.picture().contains("in sentences"), journey::picture);
            journey.keys("Esc Esc y");
            assertTrue(journey.picture().contains("Days done: "), journey::picture);
            heard(journey);
        }
        assertEquals(0, CommandRun.of(file, "settings", "--parents", "drawn").code());
        assertEquals(2, CommandRun.of(file, "settings", "--parents", "sung").code());
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            assertTrue(journey.keys("3").picture().contains("█"), journey::picture);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void everyLanguageSaysThem(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        Instant next = sample();
        try (Journey journey = new Journey(file, next, 80, 24, true).speak(language)) {
            String grid = heard(journey.keys("3"));
            assertTrue(grid.contains(words.say("spoken.chosen", "").strip()), grid);
            assertTrue(grid.contains(words.say("spoken.keys", "").strip()), grid);
        }
    }
}
