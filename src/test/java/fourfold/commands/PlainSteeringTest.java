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
        CommandRun run = CommandRun.of(file, command.split(" "));
        assertEquals("", run.err());
        assertEquals(0, run.code());
        assertTrue(
                run.out().lines().allMatch(l -> l.equals(l.strip()) && !l.contains("  ")),
                "a line drawn: " + run.out());
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
}
