// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import fourfold.terminal.PtyProgram;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What years of practice cost: files of one child of a thousand to half a million answers, and a file of four children,
 * ten years and two million answers. Each figure is the median of several fresh processes, which take turns; the answers'
 * exponent is that of time over number of answers, fitted in logarithms.
 */
class GrowthBenchmark {
    private static final int ROUNDS = Integer.getInteger("fourfold.rounds", 7);
    private static final int[] SIZES = {1_000, 10_000, 100_000, 500_000};
    private static final int[] FAMILY = {1_000, 10_000, 100_000, 1_889_000};

    @TempDir
    private Path folder;

    @Test
    void growth() throws Exception {
        Report report = new Report("growth", "Growth: years of practice in one file");
        Map<String, Path> files = new LinkedHashMap<>();
        for (int size : SIZES) {
            files.put(LongPractice.name(size), LongPractice.file(folder, size + ".db", size));
        }
        Path family = LongPractice.file(folder, "family.db", FAMILY);
        Map<String, List<double[]>> alone = new LinkedHashMap<>();
        Map<String, List<double[]>> within = new LinkedHashMap<>();
        Map<String, List<double[]>> looked = new LinkedHashMap<>();
        Map<String, Times> grids = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            for (Map.Entry<String, Path> one : files.entrySet()) {
                probe(alone, one.getKey(), one.getValue(), false);
                probe(looked, one.getKey(), one.getValue(), true);
                grids.computeIfAbsent(one.getKey(), k -> new Times()).add(grid(one.getValue(), one.getKey()));
            }
            for (int size : FAMILY) {
                probe(within, LongPractice.name(size), family, false);
            }
        }
        report.line("The family's file: 2,000,000 answers of four children, " + Files.size(family) / 1_000_000 + " MB. "
                + "Medians of " + ROUNDS
                + " fresh processes, interleaved; milliseconds, heap in MB at its fullest (of 256).");
        report.line(
                "Next and append without the first 20 of each process. An append is an answer on the disk, in the file's log."
                        + " The floor of an append is one page overwritten and forced to the disk, between any two.");
        head(report);
        alone.forEach((name, runs) -> row(report, name + " alone", runs));
        within.forEach((name, runs) -> row(report, name + " of 2,000,000", runs));
        looked.forEach((name, runs) -> row(report, name + " alone, for the grid", runs));
        report.line(
                "Exponent of reading and folding over the child's answers, from 10,000 on: %.2f alone, %.2f in the family's file."
                        .formatted(exponent(alone), exponent(within)));
        report.row("fourfold grid, whole process", "median", "above the first");
        double first = grids.values().iterator().next().median();
        grids.forEach((name, times) -> report.row(name, times.median(), times.median() - first));
        report.write();
    }

    private static void head(Report report) {
        report.row(
                "",
                "open",
                "read and fold",
                "grid",
                "heap",
                "next median",
                "next p99",
                "append median",
                "append p99",
                "fsync median",
                "fsync p99");
    }

    private static void row(Report report, String name, List<double[]> runs) {
        Object[] cells = new Object[11];
        cells[0] = name;
        for (int i = 1; i < cells.length; i++) {
            cells[i] = median(runs, i);
        }
        report.row(cells);
    }

    private static double median(List<double[]> runs, int column) {
        double[] sorted = runs.stream().mapToDouble(r -> r[column]).sorted().toArray();
        return sorted[sorted.length / 2];
    }

    private static double exponent(Map<String, List<double[]>> runs) {
        SimpleRegression line = new SimpleRegression();
        for (List<double[]> of : runs.values()) {
            if (median(of, 0) >= 9_000) {
                line.addData(Math.log(median(of, 0)), Math.log(median(of, 2)));
            }
        }
        return line.getSlope();
    }

    /** Appending changes the file, so it is done on a copy. */
    private void probe(Map<String, List<double[]>> into, String name, Path file, boolean look) throws Exception {
        Path copy = folder.resolve("copy.db");
        boolean append = !look && Files.size(file) < 20_000_000;
        if (append) {
            Files.copy(file, copy);
        }
        List<String> command = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java"));
        command.addAll(Packaged.OPENED);
        command.addAll(List.of(
                "-Xmx256m",
                GrowthProbe.class.getName(),
                (append ? copy : file).toString(),
                name,
                append ? "append" : look ? "look" : "read"));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("CLASSPATH", PtyProgram.classPath());
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        if (process.waitFor() != 0) {
            throw new IllegalStateException("the probe of " + name + " failed");
        }
        Files.deleteIfExists(copy);
        double[] numbers = java.util.Arrays.stream(printed.strip().split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        into.computeIfAbsent(name, k -> new ArrayList<>()).add(numbers);
    }

    private static long grid(Path file, String child) throws Exception {
        return Packaged.run(Packaged.opened("grid", "--child", child), Map.of("FOURFOLD_STORE", file.toString()));
    }
}
