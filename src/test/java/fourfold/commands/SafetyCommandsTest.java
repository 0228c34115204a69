// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a way back that is not there when a parent needs it, or that does more than was asked. */
class SafetyCommandsTest {
    @TempDir
    private Path folder;

    private static CommandRun run(Path file, String... arguments) {
        CommandRun run = CommandRun.of(file, arguments);
        assertEquals(0, run.code(), run.err());
        return run;
    }

    private static void damage(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        Arrays.fill(bytes, 4096 * 3, 4096 * 9, (byte) 0);
        Files.write(file, bytes);
    }

    @Test
    void aDrillMakesTheDaysBackupOnce() throws IOException {
        Path file = Practised.children(folder, "Mina");
        assertEquals("", run(file, "backup", "--list").out());
        run(file, "drill", "--plain");
        String first = run(file, "backup", "--list").out();
        assertTrue(first.startsWith("2026-03-02  "), first);
        byte[] made = Files.readAllBytes(folder.resolve("family-backups/2026-03-02.db"));
        CommandRun.typed(file, "12\n", "drill", "--plain");
        assertEquals(first, run(file, "backup", "--list").out());
        assertArrayEquals(made, Files.readAllBytes(folder.resolve("family-backups/2026-03-02.db")));
    }

    @Test
    void aDamagedFileIsToldAndTheBackupBringsItBack() throws IOException {
        Path file = Practised.once(folder);
        String before = run(file, "export", "answers").out();
        run(file, "backup");
        assertTrue(run(file, "verify").out().endsWith(": all is well.\n"));
        damage(file);
        byte[] damaged = Files.readAllBytes(file);
        CommandRun grid = CommandRun.of(file, "grid");
        assertEquals(1, grid.code());
        assertTrue(grid.err().contains("the last good one is 2026-03-02-by-hand; fourfold restore"), grid.err());
        CommandRun verify = CommandRun.of(file, "verify");
        assertEquals(1, verify.code());
        assertTrue(verify.out().contains("The last good backup is 2026-03-02-by-hand"), verify.out());
        assertTrue(run(file, "restore").out().contains("Add --yes to do it."));
        assertArrayEquals(damaged, Files.readAllBytes(file));
        run(file, "restore", "--yes");
        assertEquals(before, run(file, "export", "answers").out());
        assertArrayEquals(damaged, Files.readAllBytes(folder.resolve("family-aside.db")));
    }

    @Test
    void whatCanBeReadOfADamagedFileIsSavedToANewOne() throws IOException {
        Path file = Practised.once(folder);
        run(file, "backup");
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length - 4096));
        Path fresh = folder.resolve("saved.db");
        CommandRun salvage = run(file, "salvage", fresh.toString());
        assertTrue(salvage.out().startsWith("Saved to " + fresh + ": 1 child, 1 drill, "), salvage.out());
        assertEquals(0, CommandRun.of(fresh, "grid").code());
        CommandRun again = CommandRun.of(file, "salvage", fresh.toString());
        assertTrue(again.err().contains("there is such a file already; name another file"), again.err());
    }

    /** A failure, a finding, a question and a result of these commands in each language but English. */
    @ParameterizedTest
    @CsvSource({
        "de,alles in Ordnung,ließ sich nicht öffnen: es ist keine Fourfold-Datei,Die letzte gute Sicherung ist,Ist es"
                + " dasselbe?,1 Kind",
        "es,todo está bien,No se pudo abrir,La última copia buena es,¿Es la misma persona?,1 persona"
    })
    void theFileIsCaredForInTheParentsLanguage(
            String language, String well, String closed, String backup, String clash, String counted)
            throws IOException {
        Path file = Practised.once(folder);
        assertTrue(CommandRun.in(language, file, "verify").out().contains(well));
        Path other = folder.resolve("other.db");
        try (Store store = Store.open(other)) {
            store.add(new Child(new UUID(9, 9), "mina", Practised.BEGAN));
        }
        String asked = CommandRun.in(language, file, "merge", other.toString()).out();
        assertTrue(asked.contains(clash) && asked.contains(counted), asked);
        run(file, "backup");
        Files.writeString(file, "something else");
        CommandRun grid = CommandRun.in(language, file, "grid");
        assertEquals(1, grid.code());
        assertTrue(grid.err().contains(closed), grid.err());
        assertTrue(CommandRun.in(language, file, "verify").out().contains(backup));
    }

    @Test
    void twoChildrenOfOneNameAreAskedAbout() throws IOException {
        Path file = Practised.once(folder);
        Path other = folder.resolve("other.db");
        try (Store store = Store.open(other)) {
            store.add(new Child(new UUID(9, 9), "mina", Practised.BEGAN));
        }
        byte[] before = Files.readAllBytes(file);
        CommandRun asked = CommandRun.of(file, "merge", "--yes", other.toString());
        assertEquals(2, asked.code());
        assertTrue(asked.out().contains("Both files have a child called \"Mina\". Is it one child?"), asked.out());
        assertArrayEquals(before, Files.readAllBytes(file));
        assertTrue(run(file, "merge", "--same", "Mina", other.toString()).out().contains("Nothing was changed."));
        run(file, "merge", "--apart", "Mina=Minna", "--yes", other.toString());
        assertEquals("Mina\nMinna\n", run(file, "children").out());
        assertTrue(run(file, "backup", "--list").out().startsWith("before-merge  "));
        assertFalse(run(file, "merge", "--yes", other.toString()).out().contains("Both files"));
    }

    @Test
    void theDemoHasNothingToLookAfter() {
        Path file = Practised.once(folder);
        for (String command : List.of("backup", "restore", "verify", "salvage x", "merge x")) {
            String[] words = ("--demo " + command).split(" ");
            assertEquals(2, CommandRun.of(file, words).code(), command);
        }
    }
}
