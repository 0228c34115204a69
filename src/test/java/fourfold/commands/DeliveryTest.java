// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Guards against a manual page, a completion script or a version that tell of another program than this one. */
class DeliveryTest {
    @TempDir
    private Path folder;

    private String printed(String command) {
        CommandRun run = CommandRun.of(folder.resolve("never-made.db"), command);
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run.out();
    }

    @Test
    void theManualPageTellsEveryCommandAndOptionInAsciiThatNoMacroSwallows() {
        String page = printed("manual");
        assertTrue(page.chars().allMatch(c -> c == '\n' || (c >= ' ' && c < 0x7f)), "only ASCII");
        for (String line : page.lines().toList()) {
            boolean macro = Pattern.matches("\\.(TH|SH|SS|TP|PP|nf|fi)( \".*\")*", line);
            assertTrue(macro || !line.matches("[.'].*"), line);
            assertFalse(line.isBlank());
        }
        CommandLine all = CommandList.all(CommandRun.world(
                folder.resolve("never-made.db"),
                true,
                new BufferedReader(Reader.nullReader()),
                Writer.nullWriter(),
                Writer.nullWriter(),
                Environment::systemClock));
        told(page, all);
    }

    private static void told(String page, CommandLine command) {
        for (OptionSpec option : command.getCommandSpec().options()) {
            String name = option.longestName().replace("-", "\\-");
            assertTrue(page.contains(name), name);
        }
        for (CommandLine below : command.getSubcommands().values()) {
            if (!below.getCommandSpec().usageMessage().hidden()) {
                assertTrue(page.contains(below.getCommandName().replace("-", "\\-")), below.getCommandName());
                told(page, below);
            }
        }
    }

    @Test
    void everyCommandThatAPageOrAMessageNamesIsThere() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        try (Stream<Path> words = Files.list(Path.of("src/main/resources/fourfold/words"))) {
            words.forEach(pages::add);
        }
        Set<String> named = new TreeSet<>();
        for (Path page : pages) {
            Pattern.compile("\\bfourfold ([a-z]+)")
                    .matcher(Files.readString(page))
                    .results()
                    .forEach(found -> named.add(found.group(1)));
        }
        assertTrue(named.size() > 20, named.toString());
        named.removeAll(CommandList.NAMES);
        assertEquals(Set.of(), named);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void bashCompletesCommandsAndOptions() throws IOException, InterruptedException {
        Path script = Files.writeString(folder.resolve("completion.sh"), printed("completion"));
        assertEquals(List.of("grid"), completed(script, "fourfold", "gri"));
        assertTrue(completed(script, "fourfold", "grid", "--js").contains("--json"));
        assertTrue(completed(script, "fourfold", "export", "ans").contains("answers"));
    }

    private static List<String> completed(Path script, String... words) throws IOException, InterruptedException {
        String line = "source '" + script + "'; COMP_WORDS=(" + String.join(" ", words) + "); COMP_CWORD="
                + (words.length - 1) + "; _complete_fourfold 2> /dev/null; printf '%s\\n' \"${COMPREPLY[@]}\"";
        Process bash = new ProcessBuilder("bash", "--norc", "-c", line)
                .redirectErrorStream(true)
                .start();
        String out = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, bash.waitFor(), out);
        return out.lines().map(String::strip).toList();
    }

    @Test
    void theVersionTellsTheBuild() {
        String version = printed("--version");
        assertTrue(
                Pattern.matches(
                        "fourfold \\d+\\.\\d+\\.\\d+ \\(build (unknown|[0-9a-f]{7,}), Java \\d+\\)\\R", version),
                version);
    }
}
