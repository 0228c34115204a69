// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against errors that leave a parent without a reason, a file or a next step, and against wrong exit codes. */
class WrongUsageTest {
    @TempDir
    private Path folder;

    private static void assertTold(int code, String line, CommandRun run) {
        assertEquals("fourfold: " + line + System.lineSeparator(), run.err());
        assertEquals("", run.out());
        assertEquals(code, run.code());
    }

    @ParameterizedTest
    @ValueSource(strings = {"drill --plain", "grid", "family 6x7", "focus 7", "hold 6x7", "reset 7"})
    void everyCommandAboutAChildSaysWhenThereIsNoneAndHowToAddOne(String command) {
        CommandRun run = CommandRun.of(Practised.children(folder), command.split(" "));
        assertTold(
                2,
                "No child is here yet. Add one with: fourfold children --add NAME (see fourfold "
                        + command.split(" ")[0] + " --help)",
                run);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "drill --plain",
                "grid",
                "family 6x7",
                "focus 7",
                "hold 6x7",
                "reset 7",
                "children",
                "export answers"
            })
    void anUnknownChildIsToldWithTheNamesThereAre(String command) {
        Path file = Practised.children(folder, "Mina", "Zoë");
        String path = command.replaceAll(" (--plain|6x7|7)", "");
        assertTold(
                2,
                "There is no child \"Ivo\". Name one with --child: \"Mina\", \"Zoë\" (see fourfold " + path
                        + " --help)",
                CommandRun.of(file, (command + " --child Ivo").split(" ")));
    }

    @Test
    void severalChildrenNeedAName() {
        Path file = Practised.children(folder, "Mina", "Zoë");
        assertTold(
                2, "Name one with --child: \"Mina\", \"Zoë\" (see fourfold grid --help)", CommandRun.of(file, "grid"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"MINA", " mina ", "Mina"})
    void aNameIsFoundInWhateverCase(String name) {
        Path file = Practised.children(folder, "Mina", "Zoë");
        assertEquals(0, CommandRun.of(file, "grid", "--child", name).code());
    }

    @Test
    void aNameIsFoundHoweverItsAccentWasTyped() {
        Path file = Practised.children(folder, "Mina", "Zoë");
        assertTrue(CommandRun.of(file, "grid", "--child", "zoe\u0308").out().startsWith("Zoë: "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "family 7|a family is written like 6x7, not \"7\"",
                "family abc|a family is written like 6x7, not \"abc\"",
                "family 0x7|a family has two factors from 1 to 10, the smaller first, not 0 and 7",
                "family 6x11|a family has two factors from 1 to 10, the smaller first, not 6 and 11",
                "focus 11|a table is a number from 1 to 10, not 11",
                "hold 0|a table is a number from 1 to 10, not 0",
                "reset six|a family is written like 6x7, not \"six\"",
                "focus|Missing required parameter: 'WHAT'",
                "family|Missing required parameter: 'FAMILY'",
                "drill --minutes 0|a drill lasts 1 to 30 minutes, not \"0\"",
                "drill --minutes 31|a drill lasts 1 to 30 minutes, not \"31\"",
                "drill --minutes eight|a drill lasts 1 to 30 minutes, not \"eight\"",
                "drill --minutes 99999999999|a drill lasts 1 to 30 minutes, not \"99999999999\"",
                "grid --shiny|Unknown option: '--shiny'",
                "gird|Unmatched argument: 'gird'. Nearest: grid",
                "export|say what to export: answers or statements"
            })
    void aWrongWordIsNamedAndNothingIsDone(String command, String told) {
        Path file = Practised.children(folder, "Mina");
        String help = command.split(" ")[0].equals("gird") ? "fourfold" : "fourfold " + command.split(" ")[0];
        assertTold(2, told + " (see " + help + " --help)", CommandRun.of(file, command.split(" ")));
        assertEquals(List.of(), Rows.of(file, "SELECT * FROM act"));
    }

    @Test
    void aChildOnItsOwnNeedsACommand() {
        Path file = Practised.children(folder, "Mina");
        assertTold(
                2,
                "--child goes with a command, such as: fourfold drill --child NAME (see fourfold --help)",
                CommandRun.of(file, "--child", "Mina"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|a name has 1 to 40 characters, not 0",
                "'   '|a name has 1 to 40 characters, not 0",
                "'12345678901234567890123456789012345678901'|a name has 1 to 40 characters, not 41"
            })
    void aNameNobodyCanHaveIsRefused(String name, String told) {
        Path file = Practised.children(folder);
        assertTold(2, told + " (see fourfold children --help)", CommandRun.of(file, "children", "--add", name));
    }

    @Test
    void aChildIsFoundAndKeptApartByOneRule() {
        Path file = Practised.children(folder);
        assertEquals(0, CommandRun.of(file, "children", "--add", "Strauß").code());
        CommandRun found = CommandRun.of(file, "children", "--child", "STRAUSS");
        assertEquals(0, found.code(), found.err());
        assertEquals("Strauß", found.out().strip());
        CommandRun twice = CommandRun.of(file, "children", "--add", "STRAUSS");
        assertTrue(twice.err().contains("there is already a child called \"Strauß\""), twice.err());
        CommandRun unseen = CommandRun.of(file, "children", "--add", "\u200b");
        assertTold(2, "a name has at least one character that can be seen (see fourfold children --help)", unseen);
    }

    @Test
    void aNameCannotSteerTheTerminal() {
        Path file = Practised.children(folder, "Mina");
        String name = "\u001b[2J\u0007Bo\u202eb";
        assertTold(
                2,
                "a name holds no control characters (see fourfold children --help)",
                CommandRun.of(file, "children", "--add", name));
        assertTold(
                2,
                "There is no child \"?[2J?Bo?b\". Name one with --child: \"Mina\" (see fourfold grid --help)",
                CommandRun.of(file, "grid", "--child", name));
    }

    @Test
    void aNameThatIsTakenIsRefused() {
        Path file = Practised.children(folder, "Mina");
        assertTold(
                1,
                "could not add the child in " + file
                        + ": there is already a child called \"Mina\"; choose another name",
                CommandRun.of(file, "children", "--add", "MINA"));
    }

    @Test
    void aFileThatIsNotOursIsLeftAlone() throws IOException {
        Path file = Files.writeString(folder.resolve("letter.txt"), "Dear aunt, thank you for the book. ".repeat(40));
        assertTold(
                1,
                "could not open " + file + ": it is not a Fourfold file; name another file or restore a backup",
                CommandRun.of(file, "grid"));
        assertTrue(Files.readString(file).startsWith("Dear aunt"));
    }

    @Test
    void aFolderThatIsNotThereIsNamed() {
        Path file = folder.resolve("nowhere").resolve("deeper").resolve("family.db");
        assertTold(
                1,
                "could not open " + file + ": there is no folder " + file.getParent()
                        + "; make the folder or name another file",
                CommandRun.of(folder.resolve("family.db"), "grid", "--store", file.toString()));
    }

    @Test
    void aFolderThatCannotBeWrittenIsNamed() {
        Path closed = folder.resolve("closed");
        assertTrue(closed.toFile().mkdir() && closed.toFile().setWritable(false));
        Assumptions.assumeFalse(Files.isWritable(closed), "root writes everywhere");
        assertTold(
                1,
                "could not open " + closed.resolve("family.db")
                        + ": its folder can't be written; check the folder's rights or name another file",
                CommandRun.of(closed.resolve("family.db"), "grid"));
    }

    @Test
    void anExportNeverOverwrites() throws IOException {
        Path file = Practised.once(folder);
        Path there = Files.writeString(folder.resolve("answers.csv"), "mine");
        assertTold(
                1,
                "The file " + there + " is already there. Choose another name or remove it first.",
                CommandRun.of(file, "export", "answers", there.toString()));
        assertEquals("mine", Files.readString(there));
    }

    @Test
    void anExportToNowhereSaysWhy() {
        Path file = Practised.once(folder);
        Path nowhere = folder.resolve("nowhere").resolve("answers.csv");
        assertTold(
                1,
                "The file " + nowhere + " could not be written: there is no such folder. Name another file.",
                CommandRun.of(file, "export", "answers", nowhere.toString()));
        Path inAFile = file.resolve("answers.csv");
        CommandRun run = CommandRun.of(file, "export", "answers", inAFile.toString());
        assertTrue(run.err().startsWith("fourfold: The file " + inAFile + " could not be written: "), run.err());
        assertEquals(1, run.code());
    }

    @Test
    void outputThatIsLostIsTold() {
        Path file = Practised.once(folder);
        Writer full = new Writer() {
            @Override
            public void write(char[] text, int from, int length) throws IOException {
                throw new IOException("No space left on device");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        StringWriter err = new StringWriter();
        Environment world = CommandRun.world(
                file, true, new BufferedReader(new StringReader("")), full, err, Environment::systemClock);
        assertEquals(1, Fourfold.run(world, "export", "answers"));
        assertEquals(
                "fourfold: not everything could be written. Check where the output goes." + System.lineSeparator(),
                err.toString());
    }

    @Test
    void aMistypedWordGetsTheNearestOneNamed() {
        Path file = folder.resolve("family.db");
        for (String[] wrong : List.of(
                new String[] {"gird", "grid"},
                new String[] {"bakcup", "backup"},
                new String[] {"export anwsers", "answers"},
                new String[] {"help tuor", "tour"},
                new String[] {"grid --jsn", "--json"})) {
            CommandRun run = CommandRun.of(file, wrong[0].split(" "));
            assertEquals(2, run.code(), run.err());
            assertTrue(run.err().contains("Nearest: " + wrong[1]), run.err());
        }
    }

    @Test
    void debugTellsWhatWasFoundInTenLinesAndNoName() {
        Path file = folder.resolve("family.db");
        CommandRun.of(file, "children", "--add", "Mina");
        CommandRun run = CommandRun.of(file, "grid", "--debug");
        List<String> lines = run.err().lines().toList();
        assertEquals(10, lines.size(), run.err());
        for (String part :
                List.of("program: fourfold ", "system: ", "archive of classes: ", "file: " + file, "terminal: ")) {
            assertTrue(lines.stream().anyMatch(line -> line.startsWith(part)), part + run.err());
        }
        assertFalse(run.err().contains("Mina"), run.err());
    }

    @Test
    void helpOfACommandIsWhatTheCommandSaysOfItself() {
        Path file = folder.resolve("family.db");
        assertEquals(CommandRun.of(file, "grid", "--help"), CommandRun.of(file, "help", "grid"));
        assertEquals(
                CommandRun.of(file, "export", "answers", "--help"), CommandRun.of(file, "help", "export", "answers"));
        assertEquals(CommandRun.of(file, "--help"), CommandRun.of(file, "help"));
        assertFalse(Files.exists(file));
    }

    @Test
    void aHyphenIsStandardOutput() {
        Path file = folder.resolve("family.db");
        CommandRun.of(file, "children", "--add", "Mina");
        assertEquals(CommandRun.of(file, "export", "answers"), CommandRun.of(file, "export", "answers", "-"));
        String page = CommandRun.of(file, "print", "table", "--output", "-").out();
        assertTrue(page.startsWith("<!DOCTYPE html>") && page.endsWith("</html>\n"), page);
    }

    @Test
    void onlyDebugPrintsTheTrace() throws IOException {
        Path file = Files.writeString(folder.resolve("letter.txt"), "Dear aunt. ".repeat(100));
        assertFalse(CommandRun.of(file, "grid").err().contains("\tat "));
        for (String[] arguments : List.of(new String[] {"--debug", "grid"}, new String[] {"grid", "--debug"})) {
            CommandRun run = CommandRun.of(file, arguments);
            assertTrue(run.err().contains("\tat fourfold.store."), run.err());
            assertEquals(1, run.code());
        }
    }
}
