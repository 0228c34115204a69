// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import fourfold.simulation.Benchmark.Result;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Writes a benchmark's results into a folder: {@code table.txt}, {@code differences.txt} and {@code forecasts.txt} to read,
 * {@code children.csv} and {@code forecasts.csv} (RFC 4180) with every child, {@code plots/*.svg} with every measure.
 */
final class BenchmarkFiles {
    private final BenchmarkTable table;
    private final Path folder;

    BenchmarkFiles(BenchmarkTable table, Path folder) {
        this.table = table;
        this.folder = folder;
    }

    /**
     * Writes all of them.
     *
     * @param about what was run, to stand above the tables
     * @param against the policy the others are held against
     */
    void write(String about, String against) throws IOException {
        Path plots = Files.createDirectories(folder.resolve("plots"));
        ForecastTable forecasts = new ForecastTable(table);
        Files.writeString(folder.resolve("table.txt"), about + "\n\n" + table.text());
        Files.writeString(folder.resolve("differences.txt"), about + "\n\n" + table.differences(against));
        Files.writeString(folder.resolve("forecasts.txt"), about + "\n\n" + forecasts.text());
        csv("children.csv", Stream.concat(Stream.of(heading()), results().map(BenchmarkFiles::line)));
        List<String> columns =
                List.of("kind", "policy", "seed", "horizon", "forecaster", "probes", "log_loss", "brier");
        csv("forecasts.csv", Stream.concat(Stream.of(columns), forecasts.lines()));
        for (Measure measure : Measure.values()) {
            Files.writeString(
                    plots.resolve(measure.heading().toLowerCase(Locale.ROOT) + ".svg"), Plot.of(table, measure));
        }
    }

    private Stream<Result> results() {
        return table.policies().stream()
                .flatMap(policy -> table.kinds().stream().flatMap(kind -> table.results(kind, policy).stream()));
    }

    private static List<String> heading() {
        List<String> columns = new ArrayList<>(List.of("kind", "policy", "seed"));
        Stream.of(Measure.values()).map(Measure::heading).forEach(columns::add);
        return columns;
    }

    private static List<String> line(Result result) {
        List<String> fields = new ArrayList<>(List.of(result.kind(), result.policy(), Long.toString(result.seed())));
        for (Measure measure : Measure.values()) {
            fields.add(ForecastTable.number(result.outcome().of(measure)));
        }
        return fields;
    }

    private void csv(String name, Stream<List<String>> lines) throws IOException {
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(folder.resolve(name))) {
            lines.forEach(csv::writeRecord);
        }
    }
}
