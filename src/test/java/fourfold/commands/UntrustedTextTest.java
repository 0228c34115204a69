// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against names and file names that steer a terminal: colours, titles, text that runs the other way. */
class UntrustedTextTest {
    @TempDir
    private Path folder;

    /** Controls of C0 and C1, and the format characters that turn text around (Unicode Standard Annex 9). */
    private static void assertHarmless(String text) {
        assertTrue(
                text.codePoints()
                        .noneMatch(c -> (Character.isISOControl(c) && c != '\n' && c != '\r')
                                || Character.getType(c) == Character.FORMAT),
                () -> "a control or format character in: " + text.replaceAll("\\p{C}", "<!>"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Mi\u202ena", "Mi\u2066na\u2069", "\u200fMina", "Mi\u200bna", "\uFEFFMina", "إيمان", "Zoë"})
    void aNameNeverSteersTheScreen(String name) {
        Path file = Practised.children(folder, name);
        try (Journey journey = new Journey(file, Instant.parse("2026-03-02T08:00:00Z"), 80, 24, true)) {
            assertHarmless(journey.picture());
            journey.keys("Enter");
            assertHarmless(journey.picture());
            journey.keys("Enter").rest(100).answer();
            assertHarmless(journey.picture());
            journey.keys("Esc Esc");
            assertHarmless(journey.picture());
        }
        for (String command : new String[] {"children", "grid", "family 6x7", "focus 7"}) {
            CommandRun run = CommandRun.of(file, command.split(" "));
            assertHarmless(run.out());
            assertHarmless(run.err());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"Mi\u001bna", "Mi\u0007na", "Mi\u009bna", "Mi\nna", "Mi\u2028na", "Mi\u0000na"})
    void aNameWithControlCharactersIsRefused(String name) {
        CommandRun run = CommandRun.of(Practised.children(folder), "children", "--add", name);
        assertEquals(2, run.code());
        assertHarmless(run.err());
    }

    @Test
    void aFileNameNeverSteersTheTerminal() throws IOException {
        Path odd = folder.resolve("a\u001b]0;x\u0007\u202eb");
        Files.writeString(odd, "text");
        Path file = Practised.once(folder);
        for (String command : new String[] {"verify", "merge", "restore"}) {
            CommandRun run = CommandRun.of(file, command, odd.toString());
            assertHarmless(run.out());
            assertHarmless(run.err());
        }
        CommandRun imported = CommandRun.of(file, "import", "answers", odd.toString());
        assertEquals(2, imported.code());
        assertHarmless(imported.err());
        assertHarmless(CommandRun.of(odd, "grid").err());
    }

    @Test
    void aWrongCellOfAnImportNeverSteersTheTerminal() throws IOException {
        String csv = CommandRun.of(Practised.once(Files.createDirectory(folder.resolve("from"))), "export", "answers")
                .out()
                .replace(",copy,", ",\u001b[31mcopy\u202e,");
        Path file = Files.writeString(folder.resolve("odd.csv"), csv);
        CommandRun run = CommandRun.of(Practised.children(folder), "import", "answers", file.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("line 2: purpose must be"), run.err());
        assertHarmless(run.err());
    }

    /** Read by Gson: JSON may hold format characters, but no control character as such (RFC 8259, section 7). */
    @Test
    void jsonStaysJsonWhateverTheName() {
        Path file = Practised.children(folder, "M\"i\\na\u202e</script>");
        CommandRun run = CommandRun.of(file, "grid", "--json");
        assertEquals(0, run.code(), run.err());
        assertTrue(JsonParser.parseString(run.out()).isJsonObject());
        assertTrue(run.out().chars().noneMatch(c -> c < ' ' && c != '\n' && c != '\r'), run.out());
    }
}
