package fourfold.simulation;

import fourfold.simulation.Benchmark.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The benchmark's results as text and as CSV (RFC 4180). Each cell is a mean over children with its standard error; the
 * rows "mean" are means over kinds, every kind counting the same, their standard errors pooled.
 */
public final class BenchmarkTable {
    private static final String OVER_KINDS = "mean";

    private final List<String> kinds;
    private final List<String> policies;
    private final Map<String, List<Result>> cells = new LinkedHashMap<>();

    /** A mean and its standard error. */
    public record Cell(double mean, double error) {
        static Cell of(List<Double> values) {
            int n = values.size();
            double mean = values.stream().mapToDouble(v -> v).sum() / n;
            double squares =
                    values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
            return new Cell(mean, n < 2 ? 0 : Math.sqrt(squares / (n - 1) / n));
        }

        static Cell over(List<Cell> kinds) {
            double mean = kinds.stream().mapToDouble(Cell::mean).sum() / kinds.size();
            double squares = kinds.stream().mapToDouble(c -> c.error * c.error).sum();
            return new Cell(mean, Math.sqrt(squares) / kinds.size());
        }
    }

    /** The table of these results; every kind and policy must have the same children. */
    public BenchmarkTable(List<Result> results) {
        kinds = results.stream().map(Result::kind).distinct().toList();
        policies = results.stream().map(Result::policy).distinct().toList();
        for (Result result : results) {
            cells.computeIfAbsent(key(result.kind(), result.policy()), k -> new ArrayList<>())
                    .add(result);
        }
    }

    private static String key(String kind, String policy) {
        return kind + "/" + policy;
    }

    /** The mean of one measure for one kind and policy. */
    public Cell cell(String kind, String policy, Measure measure) {
        return Cell.of(values(kind, policy, measure));
    }

    private List<Double> values(String kind, String policy, Measure measure) {
        return cells.getOrDefault(key(kind, policy), List.of()).stream()
                .map(r -> measure.of(r.outcome()))
                .toList();
    }

    /** The mean of one measure over all kinds. */
    public Cell overKinds(String policy, Measure measure) {
        return Cell.over(kinds.stream().map(k -> cell(k, policy, measure)).toList());
    }

    /** The difference of two policies on the same children of a kind, paired by seed. */
    public Cell difference(String kind, String policy, String against, Measure measure) {
        Map<Long, Double> base = new TreeMap<>();
        cells.getOrDefault(key(kind, against), List.of()).forEach(r -> base.put(r.seed(), measure.of(r.outcome())));
        return Cell.of(cells.getOrDefault(key(kind, policy), List.of()).stream()
                .filter(r -> base.containsKey(r.seed()))
                .map(r -> measure.of(r.outcome()) - base.getOrDefault(r.seed(), 0.0))
                .toList());
    }

    /** The difference of two policies over all kinds. */
    public Cell difference(String policy, String against, Measure measure) {
        return Cell.over(
                kinds.stream().map(k -> difference(k, policy, against, measure)).toList());
    }

    /** The policy with the best mean over kinds among those whose name passes. */
    public String best(Predicate<String> among, Measure measure, boolean lowest) {
        return policies.stream()
                .filter(among)
                .min((a, b) -> (lowest ? 1 : -1)
                        * Double.compare(
                                overKinds(a, measure).mean(),
                                overKinds(b, measure).mean()))
                .orElseThrow(() -> new IllegalArgumentException("no such policy in the table"));
    }

    /** As text with columns in line. */
    public String text() {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, "%-16s%-13s", "policy", "children"));
        for (Measure m : Measure.values()) {
            text.append(String.format(Locale.ROOT, "%13s", m.heading()));
        }
        text.append('\n');
        for (String policy : policies) {
            for (String kind : kinds) {
                line(text, policy, kind);
            }
            line(text, policy, OVER_KINDS);
        }
        return text.toString();
    }

    /**
     * How far one policy is from each of the others on the same children, as text: mean differences, paired by child, with
     * their standard errors. Empty if the policy is not in the table or stands alone in it.
     */
    public String differences(String policy) {
        if (!policies.contains(policy) || policies.size() < 2) {
            return "";
        }
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, "%-29s", policy + " minus"));
        for (Measure m : Measure.values()) {
            text.append(String.format(Locale.ROOT, "%13s", m.heading()));
        }
        text.append('\n');
        for (String other : policies) {
            for (String kind : other.equals(policy) ? List.<String>of() : rows()) {
                text.append(String.format(Locale.ROOT, "%-16s%-13s", other, kind));
                for (Measure m : Measure.values()) {
                    Cell c =
                            kind.equals(OVER_KINDS) ? difference(policy, other, m) : difference(kind, policy, other, m);
                    text.append(String.format(Locale.ROOT, "%13s", m.shown(c.mean()) + "±" + m.shown(c.error())));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    private List<String> rows() {
        return Stream.concat(kinds.stream(), Stream.of(OVER_KINDS)).toList();
    }

    private void line(StringBuilder text, String policy, String kind) {
        text.append(String.format(Locale.ROOT, "%-16s%-13s", policy, kind));
        for (Measure m : Measure.values()) {
            Cell c = kind.equals(OVER_KINDS) ? overKinds(policy, m) : cell(kind, policy, m);
            text.append(String.format(Locale.ROOT, "%13s", m.shown(c.mean()) + "±" + m.shown(c.error())));
        }
        text.append('\n');
    }

    /** As CSV: policy, children, then mean and standard error of every measure. */
    public String csv() {
        StringBuilder csv = new StringBuilder("policy,children,n");
        for (Measure m : Measure.values()) {
            csv.append(',').append(m.heading()).append(',').append(m.heading()).append("_se");
        }
        csv.append("\r\n");
        for (String policy : policies) {
            for (String kind : kinds) {
                int n = cells.getOrDefault(key(kind, policy), List.of()).size();
                csv.append(policy).append(',').append(kind).append(',').append(n);
                for (Measure m : Measure.values()) {
                    Cell c = cell(kind, policy, m);
                    csv.append(String.format(Locale.ROOT, ",%.4f,%.4f", c.mean(), c.error()));
                }
                csv.append("\r\n");
            }
        }
        return csv.toString();
    }
}
