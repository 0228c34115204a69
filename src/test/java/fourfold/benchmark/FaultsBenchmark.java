// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The long form of the fault laboratory: as many minutes as it is given ({@code -Dfourfold.minutes=60}), every kind of work
 * on a family's file is done on a disk that fails. Needs Linux and a C compiler called {@code cc}.
 */
class FaultsBenchmark {
    private static final long MINUTES = Long.getLong("fourfold.minutes", 2);

    @Test
    void nothingCountedIsLost() throws Exception {
        Path memory = Path.of("/dev/shm");
        Path folder = Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "faults")
                : Files.createTempDirectory("faults");
        try {
            Path library = folder.resolve("faults.so");
            assumeTrue(compiled(library), "no C compiler called cc");
            List<String[]> lines = run(folder, library);
            write(lines);
            assertEquals(
                    List.of(),
                    lines.stream()
                            .filter(l -> l[0].startsWith("!"))
                            .map(l -> l[0])
                            .toList());
        } finally {
            remove(folder);
        }
    }

    private static boolean compiled(Path library) throws Exception {
        try {
            return new ProcessBuilder("cc", "-shared", "-fPIC", "-O2", "-o", library.toString(), "src/test/c/faults.c")
                            .inheritIO()
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static List<String[]> run(Path folder, Path library) throws Exception {
        Files.createDirectories(folder.resolve("watched"));
        Path control = Files.write(folder.resolve("control"), new byte[4096]);
        Path trace = folder.resolve("trace");
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx700m",
                        "-XX:+UseSerialGC",
                        "fourfold.store.FaultLaboratory",
                        folder.toString(),
                        trace.toString(),
                        control.toString(),
                        Long.toString(MINUTES * 60))
                .redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment()
                .putAll(Map.of(
                        "CLASSPATH", System.getProperty("java.class.path"),
                        "LD_PRELOAD", library.toString(),
                        "FAULTS_FOLDER", folder.resolve("watched").toString(),
                        "FAULTS_TRACE", trace.toString(),
                        "FAULTS_CONTROL", control.toString()));
        Process process = builder.start();
        List<String[]> lines = new ArrayList<>();
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                System.out.println(line);
                lines.add(line.split("\t", -1));
            }
        }
        assertEquals(0, process.waitFor());
        return lines;
    }

    private static void write(List<String[]> lines) {
        Report report =
                new Report("faults", "The fault laboratory: states tried, and those that were not as they must be");
        report.line("mvn clean verify -Dbenchmark=Faults -Dfourfold.minutes=" + MINUTES);
        lines.stream()
                .filter(l -> l[0].equals("work"))
                .forEach(l -> report.row((Object[]) Arrays.copyOfRange(l, 1, l.length)));
        report.line("What was told when a call failed, and how often:");
        lines.stream()
                .filter(l -> l[0].equals("said"))
                .forEach(l -> report.row((Object[]) Arrays.copyOfRange(l, 1, l.length)));
        lines.stream().filter(l -> l[0].startsWith("!")).forEach(l -> report.line(l[0]));
        report.write();
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
