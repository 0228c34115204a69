// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.simulation.Benchmark.Result;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;

/** Guards the benchmark's sums: means, paired differences, calibration, and the files they are written to. */
class BenchmarkTablesTest {
    @TempDir
    Path folder;

    private static Result result(String kind, String policy, long seed, double families) {
        Map<Measure, Double> values = new EnumMap<>(Measure.class);
        values.put(Measure.WEEK_12, families);
        return new Result(
                kind, policy, seed, new Outcome(values, policy.equals("ours") ? probes(seed, 0.3, 0.8) : List.of()));
    }

    /** Probes whose truth lies on a line of calibration. */
    private static List<Probe> probes(long seed, double intercept, double slope) {
        SplittableRandom dice = new SplittableRandom(seed);
        List<Probe> probes = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            double p = dice.nextDouble(0.02, 0.98);
            double truth = 1 / (1 + Math.exp(-intercept - slope * Math.log(p / (1 - p))));
            probes.add(new Probe(Probe.Horizon.NEXT, (float) p, 0.5f, 0.5f, 0.5f, (float) truth));
        }
        return probes;
    }

    private static BenchmarkTable table() {
        List<Result> results = new ArrayList<>();
        for (long child = 1; child <= 4; child++) {
            // One policy is two families ahead on every child, however different the children are.
            results.add(result("a<b", "ours", child, 10.0 * child + 2));
            results.add(result("a<b", "boxes", child, 10.0 * child));
            results.add(result("quick, sure", "ours", child, 30));
            results.add(result("quick, sure", "boxes", child, 31));
        }
        return new BenchmarkTable(results);
    }

    @Test
    void differencesArePairedByChild() {
        BenchmarkTable table = table();
        assertAll(
                () -> assertEquals(new Cell(2, 0), table.difference("a<b", "ours", "boxes", Measure.WEEK_12)),
                () -> assertEquals(new Cell(0.5, 0), table.difference("ours", "boxes", Measure.WEEK_12)),
                () -> assertTrue(table.cell("a<b", "ours", Measure.WEEK_12).error() > 5, table::text),
                () -> assertTrue(table.differences("ours").contains("-2.0±0.0"), table.differences("ours")),
                () -> assertEquals("", table.differences("none")));
    }

    /** Standard errors by hand: 1, 2, 3, 6 have a mean of 3 and an SD of 2.160247, over √4. */
    @Test
    void aMeanLeavesOutWhatIsNoNumber() {
        Cell cell = Cell.of(List.of(1.0, 2.0, Double.NaN, 3.0, 6.0));
        assertEquals(3, cell.mean(), 1e-12);
        assertEquals(1.0801234, cell.error(), 1e-7);
        Cell both = Cell.over(List.of(new Cell(1, 0.3), new Cell(Double.NaN, 0), new Cell(3, 0.4)));
        assertEquals(2, both.mean(), 1e-12);
        assertEquals(0.25, both.error(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "0.5, 1", "-0.4, 0.6", "1, 1.7"})
    void theLineOfCalibrationIsFoundAgain(double intercept, double slope) {
        CalibrationLine line = CalibrationLine.of(List.of(probes(1, intercept, slope), probes(2, intercept, slope)));
        assertEquals(intercept, line.intercept(), 1e-4);
        assertEquals(slope, line.slope(), 1e-4);
        assertEquals(0, line.slopeError(), 1e-4);
    }

    /** Two kinds of children half a unit of log odds to either side of the line: a mean of 0 and an error near .5. */
    @Test
    void theErrorOfTheLineIsThatOfChildrenWhoDiffer() {
        List<List<Probe>> children = new ArrayList<>();
        for (int child = 0; child < 40; child++) {
            children.add(probes(child, child % 2 == 0 ? 0.5 : -0.5, 1));
        }
        CalibrationLine line = CalibrationLine.of(children);
        assertEquals(0, line.intercept(), 0.02);
        assertEquals(0.5 / Math.sqrt(40), line.interceptError(), 0.01);
    }

    /** By hand: −.8·ln .6 − .2·ln .4 = .591919; .8·.16 + .2·.36 = .2. */
    @Test
    void lossesAreThoseToBeExpectedOfTheTruth() {
        Probe probe = new Probe(Probe.Horizon.NEXT, 0.6f, 0.8f, 0, 1, 0.8f);
        assertEquals(0.591919, probe.logLoss(0), 1e-6);
        assertEquals(0.2, probe.brier(0), 1e-6);
        assertTrue(probe.logLoss(1) < probe.logLoss(0) && probe.logLoss(0) < probe.logLoss(3));
    }

    @Test
    void everyChildIsALineOfTheCsvFilesAndEveryMeasureAPicture() throws Exception {
        new BenchmarkFiles(table(), folder).write("about", "ours");
        List<CSVRecord> children = csv("children.csv");
        assertEquals(16, children.size());
        assertEquals("quick, sure", children.get(4).get("kind"));
        assertEquals(32, Double.parseDouble(children.get(2).get("f12")));
        assertEquals("", children.get(2).get("kept14"));
        assertEquals(8 * Probe.NAMES.size(), csv("forecasts.csv").size());
        assertTrue(Files.readString(folder.resolve("forecasts.txt")).contains("0.80 (0.80 to 0.80)"));
        assertTrue(Files.readString(folder.resolve("table.txt")).startsWith("about"));
        for (Measure measure : Measure.values()) {
            Document picture = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(Plot.of(table(), measure).getBytes(StandardCharsets.UTF_8)));
            boolean empty = measure != Measure.WEEK_12;
            int circles = picture.getElementsByTagName("circle").getLength();
            assertEquals(empty ? 0 : 6, circles, measure.name());
        }
        try (var plots = Files.list(folder.resolve("plots"))) {
            assertEquals(Measure.values().length, plots.count());
        }
    }

    private List<CSVRecord> csv(String name) throws IOException {
        CSVFormat withHeader = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(folder.resolve(name), StandardCharsets.UTF_8, withHeader)) {
            return parser.getRecords();
        }
    }

    @ParameterizedTest
    @CsvSource({"0.9, 1", "1, 1", "1.1, 2", "3, 5", "0.021, 0.05", "260, 500"})
    void anAxisHasStepsOfOneTwoOrFive(double least, double step) {
        assertEquals(step, Plot.step(least), step * 1e-9);
    }
}
