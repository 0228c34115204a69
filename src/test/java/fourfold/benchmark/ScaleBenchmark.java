// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.terminal.PtyProgram;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Upkeep of a file of two million answers beside a plain read of it by SQLite's own client (every row of the answers and
 * drills, printed to nowhere), and what a child's page needs of a large file beside a small one. Each figure is the median
 * of fresh processes, which take turns. Needs a client called {@code sqlite3}.
 */
class ScaleBenchmark {
    private static final int ROUNDS = Integer.getInteger("fourfold.rounds", 3);

    @TempDir
    private Path folder;

    @Test
    void largeFiles() throws Exception {
        Path two = made("two.db", "500000", "500040", "499960", "500080");
        Path other = made("other.db", "50000");
        Path half = made("half.db", "100000", "400000");
        Path small = made("small.db", "1000");
        Map<String, Times> times = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            time(times, "a plain read", plainRead(two));
            for (String work : List.of("verify", "backup", "salvage")) {
                time(
                        times,
                        work,
                        nanos(work, two, folder.resolve(work + round + ".db").toString()));
            }
            time(times, "merge preview", nanos("merge preview", two, other.toString()));
            time(times, "page of a small file", nanos("page", small, "Child-1000"));
            time(times, "page of a large file", nanos("page", half, "Child-100000"));
        }
        Report report = new Report("scale", "Scale: upkeep of two million answers, and a child's page in a large file");
        report.line("Medians of " + ROUNDS + " fresh processes, interleaved; milliseconds. The file of two million has "
                + Files.size(two) / 1_000_000 + " MB; 50,000 more are merged into it.");
        report.row("", "median", "of a plain read");
        double plain = median(times, "a plain read");
        for (String work : List.of("a plain read", "verify", "backup", "merge preview", "salvage")) {
            report.row(work, median(times, work), median(times, work) / plain);
        }
        report.line("To open the file and read and fold the child's answers, in a fresh process:");
        report.row("", "median", "above the small");
        double least = median(times, "page of a small file");
        report.row("1,000 answers, alone in the file", least, 0.0);
        double large = median(times, "page of a large file");
        report.row("100,000 answers of 500,000 in the file", large, large - least);
        report.write();
    }

    private static double median(Map<String, Times> times, String name) {
        return times.getOrDefault(name, new Times()).median();
    }

    private static void time(Map<String, Times> times, String name, long nanos) {
        times.computeIfAbsent(name, none -> new Times()).add(nanos);
    }

    private Path made(String name, String... answers) throws Exception {
        List<String> arguments =
                new ArrayList<>(List.of("make", folder.resolve(name).toString()));
        arguments.addAll(List.of(answers));
        run(arguments);
        return folder.resolve(name);
    }

    private static long plainRead(Path file) throws Exception {
        long begun = System.nanoTime();
        Process process = new ProcessBuilder("sqlite3", file.toString(), "SELECT * FROM answer; SELECT * FROM drill")
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        if (process.waitFor() != 0) {
            throw new IllegalStateException("sqlite3 can't read " + file);
        }
        return System.nanoTime() - begun;
    }

    private static long nanos(String work, Path file, String more) throws Exception {
        return (long) (run(List.of(work, file.toString(), more)) * 1e6);
    }

    private static double run(List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(
                List.of(System.getProperty("java.home") + "/bin/java", "-Xmx1500m", ScaleProbe.class.getName()));
        command.addAll(arguments);
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("CLASSPATH", PtyProgram.classPath());
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(arguments.get(0) + " failed");
        }
        return Double.parseDouble(printed.strip());
    }
}
