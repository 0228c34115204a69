// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a command line that falls over. More with {@code -Dfourfold.lines=10000}. */
class RandomArgumentsTest {
    private static final int LINES = Integer.getInteger("fourfold.lines", 150);
    private static final List<String> COMMANDS = List.of(
            "grid",
            "family",
            "focus",
            "hold",
            "reset",
            "children",
            "export",
            "import",
            "verify",
            "backup",
            "restore",
            "salvage",
            "merge",
            "drill");
    private static final List<String> WORDS = List.of(
            "answers",
            "6x7",
            "7",
            "0",
            "-1",
            "99999999999999999999",
            "--child",
            "Mina",
            "--child=Mina",
            "--add",
            "--list",
            "--yes",
            "--plain",
            "--minutes",
            "5",
            "--json",
            "--help",
            "--",
            "",
            " ",
            "\u001b[31m",
            "\u202e",
            "=1+1",
            "@x",
            "÷",
            "\uD83D\uDE00",
            "--same",
            "--apart",
            "a=b",
            "--apart=x",
            "/",
            "/nonexistent/x",
            "..",
            "%s%n",
            "${x}",
            "\0");

    @TempDir
    private Path folder;

    @Test
    void whateverIsWrittenIsDoneOrToldInOneLine() {
        Path file = Practised.once(folder);
        SplittableRandom random = new SplittableRandom(77);
        for (int i = 0; i < LINES; i++) {
            List<String> line = new ArrayList<>();
            line.add(COMMANDS.get(random.nextInt(COMMANDS.size())));
            if (line.get(0).equals("drill")) {
                line.add("--plain");
            }
            for (int more = random.nextInt(5); more > 0; more--) {
                String word = WORDS.get(random.nextInt(WORDS.size()));
                // What might be a file to make is made in the test's own folder.
                boolean makes = line.get(0).equals("salvage") || line.get(0).equals("export");
                line.add(makes && !word.startsWith("-") && !word.equals("answers") ? folder + "/" + word : word);
            }
            CommandRun run = CommandRun.of(file, line.toArray(String[]::new));
            String told = line + ": " + run.err() + run.out();
            assertTrue(run.code() >= 0 && run.code() <= 2, told);
            assertTrue(run.code() != 0 || run.err().isEmpty(), told);
            assertFalse(run.err().contains("unforeseen") || run.err().contains("Exception"), told);
            assertTrue(run.err().lines().count() <= 1, told);
            assertTrue(
                    (run.err() + run.out()).codePoints().noneMatch(c -> c == 0x1b || c == 0x202e || c == 0),
                    "control characters came through: " + line);
        }
    }
}
