package fourfold.simulation;

import fourfold.simulation.Benchmark.Result;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/**
 * Compares ways to choose questions on simulated children. System properties: {@code policies.kinds} and
 * {@code policies.names} (names with commas between, all by default), {@code policies.seeds} (tuning to choose numbers,
 * reporting for the table; tuning by default), {@code policies.children} (of each kind, 40 by default),
 * {@code policies.csv} (a file for the table as CSV).
 */
class PoliciesBenchmark {
    @Test
    void policies() throws IOException, InterruptedException, ExecutionException {
        BenchmarkTable table = new BenchmarkTable(run(chosen()));
        System.out.println(table.text() + table.differences("ours"));
        String csv = System.getProperty("policies.csv", "");
        if (!csv.isEmpty()) {
            Files.writeString(Path.of(csv), table.csv());
        }
    }

    private static Benchmark chosen() {
        Seeds seeds =
                Seeds.valueOf(System.getProperty("policies.seeds", "tuning").toUpperCase(Locale.ROOT));
        List<String> names = names("policies.names");
        return new Benchmark(
                SimulatedLearnerKind.named(names("policies.kinds")),
                names.isEmpty()
                        ? Policies.all()
                        : names.stream().map(Policies::named).toList(),
                seeds.take(Integer.getInteger("policies.children", 40)).boxed().toList());
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
