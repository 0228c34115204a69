// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.Benchmark.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * The benchmark's results as text. Each cell is a mean over children with its standard error; the rows "mean" are means
 * over kinds, every kind counting the same, their standard errors pooled.
 */
public final class BenchmarkTable {
    private static final String OVER_KINDS = "mean";
    private static final int COLUMNS = 10;

    private final List<String> kinds;
    private final List<String> policies;
    private final Map<String, List<Result>> cells = new LinkedHashMap<>();

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

    /** The kinds of children, in the order of the results. */
    public List<String> kinds() {
        return kinds;
    }

    /** The policies, in the order of the results. */
    public List<String> policies() {
        return policies;
    }

    /** The results of one kind and policy, child by child. */
    List<Result> results(String kind, String policy) {
        return cells.getOrDefault(key(kind, policy), List.of());
    }

    /** The mean of one measure for one kind and policy. */
    public Cell cell(String kind, String policy, Measure measure) {
        return Cell.of(
                results(kind, policy).stream().map(r -> r.outcome().of(measure)).toList());
    }

    /** The mean of one measure over all kinds. */
    public Cell overKinds(String policy, Measure measure) {
        return Cell.over(kinds.stream().map(k -> cell(k, policy, measure)).toList());
    }

    /** The difference of two policies on the same children of a kind, paired by seed. */
    public Cell difference(String kind, String policy, String against, Measure measure) {
        Map<Long, Double> base = new TreeMap<>();
        results(kind, against).forEach(r -> base.put(r.seed(), r.outcome().of(measure)));
        return Cell.of(results(kind, policy).stream()
                .map(r -> r.outcome().of(measure) - base.getOrDefault(r.seed(), Double.NaN))
                .toList());
    }

    /** The difference of two policies over all kinds. */
    public Cell difference(String policy, String against, Measure measure) {
        return Cell.over(
                kinds.stream().map(k -> difference(k, policy, against, measure)).toList());
    }

    /** As text with columns in line, some measures at a time. */
    public String text() {
        return blocks("policy", policies, (policy, kind) -> {
            boolean all = kind.equals(OVER_KINDS);
            return m -> all ? overKinds(policy, m) : cell(kind, policy, m);
        });
    }

    /**
     * How far each other policy is from one of them on the same children, as text: mean differences, paired by child, with
     * their standard errors. Empty if the policy is not in the table or stands alone in it.
     */
    public String differences(String against) {
        if (!policies.contains(against) || policies.size() < 2) {
            return "";
        }
        List<String> others = policies.stream().filter(p -> !p.equals(against)).toList();
        return blocks("minus " + against, others, (policy, kind) -> {
            boolean all = kind.equals(OVER_KINDS);
            return m -> all ? difference(policy, against, m) : difference(kind, policy, against, m);
        });
    }

    private interface Row {
        Cell at(Measure measure);
    }

    private String blocks(String corner, List<String> names, BiFunction<String, String, Row> rows) {
        StringBuilder text = new StringBuilder();
        List<Measure> all = List.of(Measure.values());
        int first = widest(Stream.concat(names.stream(), Stream.of(corner)));
        int second = widest(Stream.concat(kinds.stream(), Stream.of("children")));
        for (int from = 0; from < all.size(); from += COLUMNS) {
            List<Measure> shown = all.subList(from, Math.min(all.size(), from + COLUMNS));
            text.append(pad(corner, first)).append(pad("children", second));
            shown.forEach(m -> text.append(String.format(Locale.ROOT, "%13s", m.heading())));
            text.append('\n');
            for (String name : names) {
                for (String kind :
                        Stream.concat(kinds.stream(), Stream.of(OVER_KINDS)).toList()) {
                    Row row = rows.apply(name, kind);
                    text.append(pad(name, first)).append(pad(kind, second));
                    shown.forEach(m -> text.append(
                            String.format(Locale.ROOT, "%13s", row.at(m).shown(m))));
                    text.append('\n');
                }
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static int widest(Stream<String> names) {
        return names.mapToInt(String::length).max().orElse(0) + 2;
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(width - text.length());
    }
}
