// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import fourfold.upkeep.Backups;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Guards against an example in a command's help that does not work. */
class ExamplesTest {
    @TempDir
    private Path folder;

    private static void collect(CommandLine command, List<String> examples) {
        for (CommandLine below : command.getSubcommands().values()) {
            List<String> footer = List.of(below.getCommandSpec().usageMessage().footer());
            List<String> own = footer.stream()
                    .map(String::strip)
                    .filter(l -> l.startsWith("fourfold "))
                    .toList();
            boolean shown = !below.getCommandSpec().usageMessage().hidden();
            if (shown && below.getSubcommands().isEmpty()) {
                assertFalse(own.isEmpty(), below.getCommandName() + " has no example");
            }
            examples.addAll(own);
            collect(below, examples);
        }
    }

    @Test
    void everyCommandHasAnExampleThatRuns() throws IOException {
        Path file = folder.resolve("family.db");
        Sample.fill(file);
        Backups.of(file).ofDay(LocalDate.parse("2026-03-02"));
        Files.copy(file, folder.resolve("other.db"));
        List<String> examples = new ArrayList<>();
        collect(
                CommandList.all(CommandRun.world(
                        file,
                        true,
                        new BufferedReader(Reader.nullReader()),
                        Writer.nullWriter(),
                        Writer.nullWriter(),
                        Environment::systemClock)),
                examples);
        assertTrue(examples.size() >= CommandList.NAMES.size(), examples.toString());
        for (String example : examples) {
            List<String> words = new ArrayList<>(List.of(example.split(" ")));
            words.remove(0);
            // Files of the examples are in the folder of this test.
            words.replaceAll(
                    w -> w.matches(".*\\.(csv|db|html)") ? folder.resolve(w).toString() : w);
            CommandRun run = CommandRun.of(file, words.toArray(String[]::new));
            assertEquals(0, run.code(), example + ": " + run.err());
        }
    }
}
