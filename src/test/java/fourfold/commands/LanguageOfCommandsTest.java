package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a command that answers a parent in English who speaks another language. */
class LanguageOfCommandsTest {
    /** Common English words that are no words of German or Spanish, no command and no format; from memory. */
    private static final Pattern ENGLISH = Pattern.compile(
            "\\b(the|and|of|is|it|be|are|with|from|not|this|for|no such|there|must|should|file|child|default)\\b",
            Pattern.CASE_INSENSITIVE);

    /** What stays as it is in every language: options and files. */
    private static final Pattern SAME = Pattern.compile("--\\w+|\\S*\\.(csv|db|html)\\b|/\\S+");

    @TempDir
    private Path folder;

    private static CommandRun run(String language, Path file, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Environment world = CommandRun.speaking(
                CommandRun.world(
                        file, true, new BufferedReader(new StringReader("")), out, err, Environment::systemClock),
                language);
        return new CommandRun(Fourfold.run(world, arguments), out.toString(), err.toString());
    }

    private static void assertNoEnglish(String told) {
        var found = ENGLISH.matcher(SAME.matcher(told).replaceAll(" "));
        assertFalse(found.find(), () -> found.group() + " in " + told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void everyHelpAndTheManualSpeakTheLanguage(String language) {
        Path file = folder.resolve("never-made.db");
        List<String> commands = new ArrayList<>(CommandList.NAMES);
        commands.addAll(List.of("", "export answers", "export statements", "import answers"));
        for (String command : commands) {
            String[] arguments = (command + " --help").strip().split(" ");
            String told = run(language, file, arguments).out();
            assertNotEquals(run("en", file, arguments).out(), told, command);
            assertNoEnglish(told);
        }
        // A letter beyond ASCII would be read as the end of a word.
        assertNoEnglish(run(language, file, "manual")
                .out()
                .replaceAll("\\\\\\[u00[0-9A-F]{2}\\]", "x")
                .replace("\\-", "-"));
        assertFalse(Files.exists(file));
    }

    @ParameterizedTest
    @CsvSource({"de, siehe fourfold", "es, mira fourfold"})
    void everyWrongUsageIsToldInTheLanguage(String language, String see) throws IOException {
        Path file = Practised.children(folder, "Mina");
        List<String> wrong = new ArrayList<>(List.of(
                "gird",
                "--child Mina",
                "grid --child",
                "grid --child Mina --child Mina",
                "grid --child Ivo",
                "grid --json=3",
                "drill --minutes 0",
                "family 7",
                "family 6x11",
                "family",
                "focus 11",
                "focus all",
                "hold all",
                "reset all",
                "plan --runs 0",
                "plan --runs many",
                "print poster",
                "print cards --size a3",
                "print cards",
                "export",
                "import",
                "merge other.db --apart Mina",
                "settings minutes 99",
                "settings colour red",
                "settings --order 1,2",
                "gate --set --reset",
                "gate --set",
                "children --add \u200b",
                "children --add \u0007",
                "children --remove Mina",
                "children --archive Ivo"));
        CommandList.NAMES.forEach(name -> wrong.add(name + " --shiny"));
        for (String line : wrong) {
            CommandRun run = run(language, file, line.split(" "));
            assertEquals(2, run.code(), line + ": " + run.err());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains(see), run.err());
            assertNoEnglish(run.err() + run.out());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void whatIsDoneIsToldInTheLanguage(String language) throws IOException {
        Path file = Practised.children(folder, "Mina");
        Path there = Files.createFile(folder.resolve("taken.csv"));
        Path made = folder.resolve("made.csv");
        assertEquals(
                0, run(language, file, "export", "answers", made.toString()).code());
        assertEquals(
                1, run(language, file, "export", "answers", there.toString()).code());
        for (String line : List.of(
                "children --add Ivo",
                "children --archive Ivo",
                "children",
                "children --remove Ivo --yes",
                "focus 7",
                "focus 7 --end",
                "hold 6x7",
                "hold 6x7 --end",
                "reset all --yes",
                "settings minutes 6",
                "gate",
                "export answers " + there,
                "export answers " + folder.resolve("nowhere").resolve("new.csv"),
                "import answers " + folder.resolve("nowhere.csv"),
                "import answers " + made)) {
            CommandRun run = run(language, file, line.split(" "));
            assertNoEnglish(run.err() + run.out());
            assertNotEquals("", run.err() + run.out(), line);
        }
    }
}
