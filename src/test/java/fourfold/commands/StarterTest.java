// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a starter that loses words, or that leaves a parent without one on what is missing. */
class StarterTest {
    private static final Path PACKAGE = Path.of("src/main/package");

    @TempDir
    private Path temporary;

    /** Runs the starter in a folder of its own with a Java that prints what it is given, a line for each word. */
    private String started(String release, Map<String, String> environment, String... arguments)
            throws IOException, InterruptedException {
        return started("a b/Übung ×", release, environment, arguments);
    }

    private String started(String folder, String release, Map<String, String> environment, String... arguments)
            throws IOException, InterruptedException {
        Path here = Files.createDirectories(temporary.resolve(folder));
        Files.createDirectories(here.resolve("program").resolve("lib"));
        Path starter = executable(here.resolve("fourfold"), Files.readString(PACKAGE.resolve("fourfold")));
        Path java = Files.createDirectories(temporary.resolve("jdk").resolve("bin"));
        Files.writeString(java.resolveSibling("release"), release);
        executable(java.resolve("java"), """
                        #!/bin/sh
                        for word in "$@"; do
                            case $word in -XX:ArchiveClassesAtExit=*) echo made > "${word#*=}"; exit ;; esac
                        done
                        printf '%s\\n' "$FOURFOLD_CHARSET" "$@"
                        """);
        List<String> command = new java.util.ArrayList<>(List.of("sh", starter.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().keySet().removeIf(name -> name.startsWith("LC_") || name.startsWith("FOURFOLD_"));
        Map<String, String> given = new HashMap<>(Map.of(
                "JAVA_HOME", temporary.resolve("jdk").toString(),
                "LANG", "C.UTF-8",
                "XDG_CACHE_HOME", temporary.resolve("no folder").resolve("x").toString()));
        Files.writeString(temporary.resolve("no folder"), "a file is in the way");
        given.putAll(environment);
        builder.environment().putAll(given);
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return printed;
    }

    private static Path executable(Path file, String text) throws IOException {
        Files.writeString(file, text);
        return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void everyWordReachesTheProgramFromAnyFolderAlsoWithoutACache() throws IOException, InterruptedException {
        List<String> words = started("JAVA_VERSION=\"17.0.15\"\n", Map.of(), "drill", "--child", "Zoë Ann", "", "$HOME")
                .lines()
                .toList();
        int jar = words.indexOf("-jar");
        assertTrue(words.get(jar + 1).endsWith("/a b/Übung ×/program/fourfold.jar"), words.toString());
        assertEquals(List.of("drill", "--child", "Zoë Ann", "", "$HOME"), words.subList(jar + 2, words.size()));
        assertEquals("", words.get(0));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void anOlderJavaIsToldInTheReadersLanguage() throws IOException, InterruptedException {
        String told = started("JAVA_VERSION=\"11.0.2\"\n", Map.of("LANG", "de_DE.UTF-8"));
        assertTrue(told.startsWith("fourfold: Java 17 oder neuer wird gebraucht"), told);
        assertEquals(1, told.lines().count());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whereTheLanguageSettingCanNotWriteThePathTheProgramIsToldWhatTheTerminalReads()
            throws IOException, InterruptedException {
        String told = started("JAVA_VERSION=\"25\"\n", Map.of("LC_ALL", "C"));
        assertEquals("ANSI_X3.4-1968", told.lines().findFirst().orElse(""), told);
    }

    /** The folder of one archive of classes, once the start that began it has made it. */
    private Path made(Path cache, List<Path> before) throws IOException {
        while (true) {
            try (Stream<Path> all = Files.list(cache.resolve("fourfold"))) {
                List<Path> fresh = all.filter(p -> !before.contains(p) && Files.exists(p.resolve("fourfold.jsa")))
                        .toList();
                if (!fresh.isEmpty()) {
                    assertEquals(1, fresh.size(), fresh.toString());
                    return fresh.get(0);
                }
            }
            Thread.onSpinWait();
        }
    }

    private static String archive(String printed) {
        return printed.lines()
                .filter(word -> word.startsWith("-XX:SharedArchiveFile=") || word.startsWith("-Dfourfold.archive="))
                .findFirst()
                .orElse("")
                .replaceFirst(".*=", "");
    }

    @Test
    @Timeout(60)
    @DisabledOnOs(OS.WINDOWS)
    void eachFolderHasAnArchiveOfItsOwnMadeAtTheFirstStartAndAgainWhenJavaChanges()
            throws IOException, InterruptedException {
        Path cache = Files.createDirectory(temporary.resolve("cache"));
        Map<String, String> environment = Map.of("XDG_CACHE_HOME", cache.toString());
        String java = "JAVA_VERSION=\"17.0.15\"\n";
        assertEquals("begun", archive(started("one", java, environment)));
        Path one = made(cache, List.of());
        assertEquals("begun", archive(started("a b/Übung ×", java, environment)));
        Path two = made(cache, List.of(one));
        assertEquals(one.resolve("fourfold.jsa").toString(), archive(started("one", java, environment)));
        assertEquals(two.resolve("fourfold.jsa").toString(), archive(started(java, environment)));

        String newer = "JAVA_VERSION=\"17.0.16\"\n";
        assertEquals("begun", archive(started("one", newer, environment)));
        Path again = made(cache, List.of(one, two));
        assertFalse(Files.exists(one), "the archive for the Java there was before");
        assertEquals(again.resolve("fourfold.jsa").toString(), archive(started("one", newer, environment)));
        assertTrue(Files.exists(two), "that of the other folder");

        Files.move(temporary.resolve("a b"), temporary.resolve("moved away"));
        assertEquals("begun", archive(started("three", newer, environment)));
        made(cache, List.of(two, again));
        assertFalse(Files.exists(two), "that of a folder that is no more");
        assertTrue(Files.exists(again));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whereNoArchiveCanBePutTheProgramIsToldSo() throws IOException, InterruptedException {
        assertEquals("unwritable", archive(started("JAVA_VERSION=\"17\"\n", Map.of())));
    }

    /** It can't be run here: what can be said of it without Windows. What it has Java do is run by src/test/package/matrix.sh. */
    @Test
    void theStarterForWindowsStartsTheSameJarWithTheSameOptions() throws IOException {
        String text = Files.readString(PACKAGE.resolve("fourfold.cmd"), StandardCharsets.US_ASCII);
        assertEquals(text.lines().count(), text.chars().filter(c -> c == '\r').count(), "lines end as Windows wants");
        String other = Files.readString(PACKAGE.resolve("fourfold"));
        for (String option : List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xlog:cds=off")) {
            assertTrue(text.contains(option) && other.contains(option), option);
        }
        assertTrue(text.contains("-jar \"%here%program\\fourfold.jar\" %*"));
        Set<String> gone = all(Pattern.compile("goto (\\w+)"), text);
        assertEquals(all(Pattern.compile("(?m)^:(\\w+)"), text), gone);
        for (String line : text.lines().toList()) {
            assertEquals(0, line.chars().filter(c -> c == '"').count() % 2, line);
            // A path may hold a sign that means something outside quotes.
            String unquoted = line.replaceAll("\"[^\"]*\"", "");
            assertFalse(unquoted.matches(".*%(here|bin|archive|LOCALAPPDATA|JAVA_HOME|~dp0)%?.*"), line);
        }
    }

    private static Set<String> all(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
