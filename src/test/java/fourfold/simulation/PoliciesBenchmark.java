// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.Benchmark.Result;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Compares ways to choose questions on simulated children. System properties, lists with commas between: {@code
 * policies.kinds}, {@code policies.names} and {@code policies.calendars} (all kinds and the policies of the table by default, each kind
 * on its own calendar); {@code policies.seeds} (a range of {@link Seeds}, or the first seed as a number; tuning by default);
 * {@code policies.children} (of each kind, 40 by default); {@code policies.against} (the policy the others are held
 * against, ours by default); {@code policies.folder} (where {@link BenchmarkFiles} writes, target/policies by default).
 */
class PoliciesBenchmark {
    @Test
    void policies() throws IOException, InterruptedException, ExecutionException {
        long start = System.nanoTime();
        Benchmark benchmark = chosen();
        BenchmarkTable table = new BenchmarkTable(run(benchmark));
        Duration took = Duration.ofNanos(System.nanoTime() - start);
        String against = System.getProperty("policies.against", "ours");
        System.out.println(table.text() + table.differences(against) + new ForecastTable(table).text());
        System.out.printf("%d school years in %d s%n", benchmark.tasks().size(), took.toSeconds());
        new BenchmarkFiles(table, Path.of(System.getProperty("policies.folder", "target/policies")))
                .write(about(benchmark), against);
    }

    private static String about(Benchmark benchmark) {
        List<Long> seeds = benchmark.seeds();
        return "Seeds %d to %d (%s), %d children of each kind. Means with standard errors; \"mean\" is over kinds."
                .formatted(
                        seeds.get(0),
                        seeds.get(seeds.size() - 1),
                        System.getProperty("policies.seeds", "tuning"),
                        seeds.size());
    }

    private static Benchmark chosen() {
        List<SimulatedLearnerKind> kinds = SimulatedLearnerKind.named(names("policies.kinds"));
        List<String> names = names("policies.names");
        return new Benchmark(
                OnCalendar.each(kinds, names("policies.calendars")),
                names.isEmpty()
                        ? Policies.compared()
                        : names.stream().map(Policies::named).toList(),
                seeds().boxed().toList());
    }

    private static LongStream seeds() {
        String seeds = System.getProperty("policies.seeds", "tuning");
        int children = Integer.getInteger("policies.children", 40);
        Optional<Long> first = seeds.matches("\\d+") ? Optional.of(Long.parseLong(seeds)) : Optional.empty();
        return first.map(f -> LongStream.range(f, f + children))
                .orElseGet(() -> Seeds.named(seeds).take(children));
    }

    private static List<String> names(String property) {
        String value = System.getProperty(property, "");
        return value.isEmpty() ? List.of() : List.of(value.split(",", -1));
    }

    /** As many at a time as there are processors; results stand in the order of the tasks, whoever was first. */
    private static List<Result> run(Benchmark benchmark) throws InterruptedException, ExecutionException {
        ExecutorService threads =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        try {
            List<Future<Result>> futures = new ArrayList<>();
            for (Benchmark.Task task : benchmark.tasks()) {
                futures.add(threads.submit(task::run));
            }
            List<Result> results = new ArrayList<>();
            for (Future<Result> future : futures) {
                results.add(future.get());
            }
            return results;
        } finally {
            threads.shutdownNow();
        }
    }
}
