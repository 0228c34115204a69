// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against sentences that leave a parent who only hears them in the dark: the shakiest family is found, practised more,
 * that is taken back, and the year is read, by what the sentences say and by nothing else.
 */
class PlainSteeringTest {
    private static final Pattern FOCUS = Pattern.compile("To practise it more: fourfold (focus \\S+)\\.");
    private static final Pattern READ = Pattern.compile("To read more: fourfold (family \\S+ --plain)");

    @TempDir
    private Path folder;

    private static String said(Path file, String command) {
        String out = run(file, command);
        assertTrue(out.lines().allMatch(l -> l.equals(l.strip()) && !l.contains("  ")), "a line drawn: " + out);
        return out;
    }

    private static String run(Path file, String command) {
        CommandRun run = CommandRun.of(file, command.split(" "));
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run.out();
    }

    private static String first(String text) {
        return text.lines().findFirst().orElseThrow();
    }

    private static String found(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text);
        assertTrue(matcher.find(), text);
        return matcher.group(1);
    }

    @Test
    void aParentSteersBySentencesAlone() {
        Path file = folder.resolve("sample.db");
        Sample.fill(file);
        String grid = said(file, "grid --plain");
        String focus = found(FOCUS, grid);
        String read = found(READ, grid);
        assertFalse(first(said(file, read)).contains("in focus"));
        said(file, focus);
        assertTrue(first(said(file, read)).contains("in focus"));
        assertTrue(said(file, "grid --plain").contains("In focus:"));
        said(file, focus + " --end");
        assertFalse(first(said(file, read)).contains("in focus"));
        String year = said(file, "year");
        assertTrue(found(Pattern.compile("(Week \\d+ of \\d+\\. Days done: \\d+; missed: \\d+;)"), year)
                        .length()
                > 0);
        assertEquals(
                10,
                year.lines()
                        .filter(l -> l.contains(" times table: multiplication "))
                        .count());
        assertTrue(said(file, "plan --plain --runs 0").contains("The 7 times table: families 10, met "));
        assertTrue(said(file, "rates --plain").contains("facts correct a minute, of "));
        assertTrue(said(file, "today").lines().count() == 2);
    }

    @Test
    void theCalendarTheSettingsAndWhatWasDoneAreSentences() {
        Path file = folder.resolve("sample.db");
        Sample.fill(file);
        run(file, "calendar --start 2026-03-02 --begin england");
        run(file, "calendar --table 7 --divide 12");
        run(file, "taught 7 multiply");
        run(file, "focus 7x8");
        run(file, "focus 7x8 --end");
        said(file, "settings minutes 6 --plain");
        String calendar = said(file, "calendar --plain");
        assertTrue(calendar.contains("The 7 times table: multiplication taught on "), calendar);
        assertTrue(calendar.contains("; division week 12, from "), calendar);
        String settings = said(file, "settings --plain");
        assertTrue(
                settings.contains("Minutes a drill: 6 minutes. To change it: fourfold settings minutes and"), settings);
        assertTrue(settings.contains("For all children: --language system;"), settings);
        String history = said(file, "history --plain");
        assertTrue(history.contains("7 times 8"), history);
        assertTrue(history.contains("table 7 taught: multiplication "), history);
        for (String text : new String[] {calendar, settings, history}) {
            assertTrue(text.lines().allMatch(l -> l.matches(".*[.?!]")), text);
            assertFalse(text.matches("(?s).*[×÷·].*"), text);
        }
    }
}
