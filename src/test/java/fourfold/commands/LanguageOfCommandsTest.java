// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import fourfold.terminal.TerminalException;
import fourfold.words.Words;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

    /** What stays as it is in every language: options, files and the columns of a log. */
    private static final Pattern SAME = Pattern.compile("id,child,\\S*|--\\w+|\\S*\\.(csv|db|html)\\b|/\\S+");

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
                "plan --runs -1",
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
    @ValueSource(strings = {"en", "de", "es"})
    void everyReasonNotToDrawHasItsWords(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        for (TerminalException.Reason reason : TerminalException.Reason.values()) {
            assertTrue(words.say("terminal." + reason.name().toLowerCase(Locale.ROOT), "EPERM")
                            .length()
                    > 20);
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

    /** What an imported line can be wrong in: what stands in a good file, and what in the bad one. */
    private static final List<String> FAULTS = List.of(
            "id,child,drill=id,kid,drill",
            ",1,2026-03-01=,0,2026-03-01",
            ",1,2026-03-01=,one,2026-03-01",
            ",1,2026-03-01=,2,2026-03-01",
            "00-0000-0000-0000-000000000004=00-x",
            "T08:00=T28:00",
            "2026-03-01=1969-03-01",
            "2026-03-01=5001-03-01",
            ",60,practise=,2000,practise",
            ",practise,=,guess,",
            ",practise,=,copy,",
            ",practise,=,paper,",
            ",multiply,=,add,",
            ",6,7,=,6,17,",
            ",42,1,=,x2,1,",
            ",42,1,=,42,0,",
            ",900,1200,=,900,-1,",
            ",0,terminal=,-1,terminal",
            ",terminal=,abacus",
            ",terminal=,terminal,more",
            "Mina=Mi\u0007na",
            "Mina= Lu",
            "Mina=\u200b",
            "Mina=\"Mina");

    private static final String LINE = String.join(",", fourfold.records.AnswersCsv.COLUMNS)
            + "\r\na811c6a7-7206-34b4-874f-d2f2925137df,Mina,00000000-0000-0000-0000-000000000004,1,"
            + "2026-03-01T08:00:00.000Z,60,practise,multiply,6,7,42,1,900,1200,0,terminal,\r\n";

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void everyFaultOfAnImportedLineIsToldInTheLanguage(String language) throws IOException {
        Path file = Practised.children(folder, "Mina");
        Path csv = folder.resolve("faulty.csv");
        Files.writeString(csv, LINE);
        told(language, 0, file, "import", "answers", csv.toString());
        List<String> told = new ArrayList<>();
        for (String fault : FAULTS) {
            String[] change = fault.split("=", -1);
            assertTrue(LINE.contains(change[0]), fault);
            Files.writeString(csv, LINE.replace(change[0], change[1]));
            told.add(told(language, 2, file, "import", "answers", csv.toString()));
        }
        assertTrue(told.stream().distinct().count() > FAULTS.size() - 4, String.join("", told));
        Files.writeString(csv, "");
        told(language, 2, file, "import", "answers", csv.toString());
    }

    /** What is printed, after a check that no line of it is as in English; it ends with that code. */
    private static String told(String language, int code, Path file, String... arguments) {
        CommandRun run = CommandRun.in(language, file, arguments);
        CommandRun english = CommandRun.in("en", file, arguments);
        assertEquals(code, run.code(), run.err());
        assertEquals(code, english.code(), english.err());
        List<String> inEnglish = (english.out() + english.err()).lines().toList();
        for (String line : (run.out() + run.err()).lines().toList()) {
            assertFalse(inEnglish.contains(line) && !ALIKE.matcher(line).matches(), line);
        }
        assertNoEnglish(run.out() + run.err());
        return run.out() + run.err();
    }

    /** Lines that are the same in every language: signs and numbers, names, dates of ISO 8601, paths. */
    private static final Pattern ALIKE = Pattern.compile(
            "[^\\p{L}]*|(Pip|Juno|Bo|Mina)|\\d{4}-\\d{2}-\\d{2}\\S* +/\\S+|(language|theme|pages) +system|parents +drawn|(motion|browser) +on");

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void whatLooksAfterTheFileSpeaksTheLanguage(String language) throws IOException {
        Path file = Practised.children(folder, "Mina");
        Path rubbish = Files.write(folder.resolve("rubbish.db"), new byte[4096]);
        Path none = folder.resolve("nowhere.db");
        told(language, 0, file, "verify");
        told(language, 1, file, "verify", rubbish.toString());
        told(language, 1, file, "verify", none.toString());
        told(
                language,
                1,
                file,
                "verify",
                Files.createFile(folder.resolve("empty.db")).toString());
        told(language, 2, file, "restore");
        told(language, 0, file, "backup");
        told(language, 0, file, "restore");
        told(language, 1, file, "restore", none.toString(), "--yes");
        told(language, 1, file, "restore", rubbish.toString(), "--yes");
        told(language, 1, file, "merge", none.toString());
        told(language, 1, file, "merge", rubbish.toString());
        told(language, 2, file, "merge", file.toString());
        told(language, 1, rubbish, "grid");
        told(language, 1, none, "salvage", folder.resolve("saved.db").toString());
        told(language, 1, folder.resolve("no").resolve("such").resolve("family.db"), "grid");
        told(language, 1, folder, "grid");
        told(language, 2, file, "--demo", "verify");
        told(language, 0, file, "restore", "--yes");
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "es"})
    void whatAParentReadsSpeaksTheLanguage(String language) throws IOException {
        Path file = Practised.children(folder, "Mina");
        for (String command : List.of("grid", "family 6x7", "rates", "plan --runs 0", "settings", "gate", "history")) {
            told(language, 0, file, command.split(" "));
        }
        told(language, 0, file, "focus", "6x7");
        told(language, 0, file, "settings", "minutes", "6");
        told(language, 0, file, "history");
        told(language, 1, file, "children", "--add", "mina");
        told(language, 1, file, "drill");
    }
}
