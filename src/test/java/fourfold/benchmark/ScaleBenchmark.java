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
 * of fresh processes, which take turns: the time that passed, and what their processors worked, the start of the process
 * too, which says more where other work goes on. Needs Linux, and a client called {@code sqlite3}.
 */
class ScaleBenchmark {
    private static final int ROUNDS = Integer.getInteger("fourfold.rounds", 3);

    /** Linux counts a hundred ticks a second (proc(5), sysconf(_SC_CLK_TCK)). */
    private static final long NANOS_A_TICK = 10_000_000;

    @TempDir
    private Path folder;

    @Test
    void largeFiles() throws Exception {
        Path two = made("two.db", "500000", "500040", "499960", "500080");
        Path other = made("other.db", "50000");
        Path half = made("half.db", "100000", "400000");
        Path small = made("small.db", "1000");
        Map<String, Times> times = new LinkedHashMap<>();
        Map<String, Times> work = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            long worked = worked();
            time(times, "a plain read", plainRead(two));
            time(work, "a plain read", worked() - worked);
            for (String kind : List.of("verify", "backup", "salvage", "merge preview")) {
                String more = kind.equals("merge preview")
                        ? other.toString()
                        : folder.resolve(kind + round + ".db").toString();
                worked = worked();
                time(times, kind, nanos(List.of("-Xmx1500m"), kind, two, more));
                time(work, kind, worked() - worked);
            }
            for (Map.Entry<Path, String> page :
                    Map.of(small, "Child-1000", half, "Child-100000").entrySet()) {
                worked = worked();
                time(times, page.getValue(), nanos(Packaged.OPENED, "page", page.getKey(), page.getValue()));
                time(work, page.getValue(), worked() - worked);
            }
        }
        Report report = new Report("scale", "Scale: upkeep of two million answers, and a child's page in a large file");
        report.line("Medians of " + ROUNDS + " fresh processes, interleaved; milliseconds. The file of two million has "
                + Files.size(two) / 1_000_000 + " MB; 50,000 more are merged into it.");
        report.row("", "median", "of a plain read", "work", "of a plain read");
        double plain = median(times, "a plain read");
        double least = median(work, "a plain read");
        for (String kind : List.of("a plain read", "verify", "backup", "merge preview", "salvage")) {
            double passed = median(times, kind);
            double took = median(work, kind);
            report.row(kind, passed, passed / plain, took, took / least);
        }
        report.line(
                "To open the file and read and fold the child's answers, in a fresh process as the program is started:");
        report.row("", "median", "above the small", "work", "above the small");
        double leastTime = median(times, "Child-1000");
        double leastWork = median(work, "Child-1000");
        report.row("1,000 answers, alone in the file", leastTime, 0.0, leastWork, 0.0);
        double large = median(times, "Child-100000");
        double largeWork = median(work, "Child-100000");
        report.row(
                "100,000 answers of 500,000 in the file", large, large - leastTime, largeWork, largeWork - leastWork);
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
        run(List.of("-Xmx1500m"), arguments);
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

    /** What the processors worked for processes that this one started and that have ended: proc(5), cutime and cstime. */
    private static long worked() throws IOException {
        String all = Files.readString(Path.of("/proc/self/stat"));
        String[] fields = all.substring(all.lastIndexOf(')') + 2).split(" ", -1);
        return (Long.parseLong(fields[13]) + Long.parseLong(fields[14])) * NANOS_A_TICK;
    }

    private static long nanos(List<String> options, String work, Path file, String more) throws Exception {
        return (long) (run(options, List.of(work, file.toString(), more)) * 1e6);
    }

    private static double run(List<String> options, List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java"));
        command.addAll(options);
        command.add(ScaleProbe.class.getName());
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
