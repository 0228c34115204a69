// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.Benchmark.Result;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * How good the forecasts of the policies that have any are, kind by kind and for each horizon: log loss and Brier score
 * beside those of three references, and the line of calibration with 95 % intervals over children.
 */
final class ForecastTable {
    private static final double NORMAL_95 = 1.96;

    private final BenchmarkTable table;

    ForecastTable(BenchmarkTable table) {
        this.table = table;
    }

    String text() {
        StringBuilder text = new StringBuilder();
        for (String policy : table.policies()) {
            for (Probe.Horizon horizon : Probe.Horizon.values()) {
                block(text, policy, horizon);
            }
        }
        return text.toString();
    }

    private void block(StringBuilder text, String policy, Probe.Horizon horizon) {
        StringBuilder rows = new StringBuilder();
        for (String kind : table.kinds()) {
            List<List<Probe>> children = children(Stream.of(kind), policy, horizon);
            rows.append(children.isEmpty() ? "" : row(kind, children));
        }
        if (!rows.isEmpty()) {
            text.append(String.format(
                    Locale.ROOT,
                    "%s, %s%n%-22s%9s%s%s%24s%24s%n",
                    policy,
                    horizon.words(),
                    "children",
                    "probes",
                    "  log loss " + String.join(" | ", Probe.NAMES),
                    "  Brier the same",
                    "slope (95 %)",
                    "intercept (95 %)"));
            text.append(rows)
                    .append(row("all", children(table.kinds().stream(), policy, horizon)))
                    .append('\n');
        }
    }

    private List<List<Probe>> children(Stream<String> kinds, String policy, Probe.Horizon horizon) {
        return kinds.flatMap(kind -> table.results(kind, policy).stream())
                .map(r -> r.outcome().probes().stream()
                        .filter(p -> p.horizon() == horizon)
                        .toList())
                .filter(probes -> !probes.isEmpty())
                .toList();
    }

    private static String row(String name, List<List<Probe>> children) {
        long probes = children.stream().mapToLong(List::size).sum();
        StringBuilder row = new StringBuilder(String.format(Locale.ROOT, "%-22s%9d ", name, probes));
        for (int who = 0; who < Probe.NAMES.size(); who++) {
            row.append(String.format(Locale.ROOT, " %.4f", logLoss(children, who)));
        }
        row.append("  ");
        for (int who = 0; who < Probe.NAMES.size(); who++) {
            row.append(String.format(Locale.ROOT, " %.4f", brier(children, who)));
        }
        CalibrationLine line = CalibrationLine.of(children);
        return row.append(interval(line.slope(), line.slopeError()))
                .append(interval(line.intercept(), line.interceptError()))
                .append('\n')
                .toString();
    }

    private static String interval(double middle, double error) {
        return String.format(
                Locale.ROOT, "   %6.2f (%.2f to %.2f)", middle, middle - NORMAL_95 * error, middle + NORMAL_95 * error);
    }

    /** The mean log loss over all probes of these children. */
    static double logLoss(List<List<Probe>> children, int who) {
        return children.stream()
                .flatMap(List::stream)
                .mapToDouble(p -> p.logLoss(who))
                .average()
                .orElse(Double.NaN);
    }

    private static double brier(List<List<Probe>> children, int who) {
        return children.stream()
                .flatMap(List::stream)
                .mapToDouble(p -> p.brier(who))
                .average()
                .orElse(Double.NaN);
    }

    /** One line for each child, horizon and forecaster, for a CSV file. */
    Stream<List<String>> lines() {
        return table.policies().stream()
                .flatMap(policy -> table.kinds().stream().flatMap(kind -> table.results(kind, policy).stream()))
                .flatMap(ForecastTable::lines);
    }

    private static Stream<List<String>> lines(Result result) {
        return Stream.of(Probe.Horizon.values()).flatMap(horizon -> {
            List<Probe> probes = result.outcome().probes().stream()
                    .filter(p -> p.horizon() == horizon)
                    .toList();
            return probes.isEmpty()
                    ? Stream.of()
                    : Stream.of(0, 1, 2, 3)
                            .map(who -> List.of(
                                    result.kind(),
                                    result.policy(),
                                    Long.toString(result.seed()),
                                    horizon.words(),
                                    Probe.NAMES.get(who),
                                    Integer.toString(probes.size()),
                                    number(logLoss(List.of(probes), who)),
                                    number(brier(List.of(probes), who))));
        });
    }

    /** A number as CSV files have it; nothing where it is none. */
    static String number(double x) {
        return Double.isNaN(x) ? "" : String.format(Locale.ROOT, "%.6f", x);
    }
}
