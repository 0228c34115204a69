package fourfold.commands;

import fourfold.simulation.Benchmark;
import fourfold.simulation.Benchmark.Result;
import fourfold.simulation.BenchmarkTable;
import fourfold.simulation.Policies;
import fourfold.simulation.Policy;
import fourfold.simulation.Seeds;
import fourfold.simulation.SimulatedLearnerKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Runs the benchmark of policies on simulated children. */
@Command(
        name = "simulate",
        mixinStandardHelpOptions = true,
        description = "Compare ways to choose questions on simulated children; opens no store.",
        footer = {"", "Example:", "  fourfold simulate --children 1 --kinds two-strength --policies tables"})
final class SimulateCommand implements Callable<Integer> {
    private static final int THREADS = 2;

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--children", paramLabel = "N", defaultValue = "40", description = "Children a kind. Default: 40.")
    private int children;

    @Option(names = "--kinds", split = ",", paramLabel = "KIND", description = "Kinds of children. Default: all.")
    private List<String> kinds = List.of();

    @Option(names = "--policies", split = ",", paramLabel = "POLICY", description = "Policies. Default: all.")
    private List<String> policies = List.of();

    @Option(
            names = "--seeds",
            paramLabel = "tuning|reporting",
            description = "Which children: tuning to choose numbers, reporting for the table. Default: tuning.")
    private String seeds = "tuning";

    @Option(names = "--csv", paramLabel = "FILE", description = "Write the table as CSV too.")
    private @Nullable Path csv;

    @Override
    public Integer call() throws IOException, InterruptedException {
        List<Result> results = run(benchmark());
        BenchmarkTable table = new BenchmarkTable(results);
        String told = table.text() + table.differences("ours");
        app.world().out().print(app.world().unicode() ? told : told.replace("±", "+-"));
        if (csv != null) {
            Files.writeString(csv, table.csv(), StandardCharsets.UTF_8);
        }
        return ExitCode.DONE;
    }

    private Benchmark benchmark() {
        try {
            List<Long> whose = Seeds.valueOf(seeds.toUpperCase(java.util.Locale.ROOT))
                    .take(children)
                    .boxed()
                    .toList();
            List<SimulatedLearnerKind> chosen = SimulatedLearnerKind.all().stream()
                    .filter(k -> kinds.isEmpty() || kinds.contains(k.name()))
                    .toList();
            List<Policy> compared = policies.isEmpty()
                    ? Policies.all()
                    : policies.stream().map(Policies::named).toList();
            return new Benchmark(chosen, compared, whose);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()), e);
        }
    }

    /** Two at a time; results are put in the order of the tasks, so the table never depends on who was first. */
    private static List<Result> run(Benchmark benchmark) throws InterruptedException {
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
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
        } catch (ExecutionException e) {
            throw new IllegalStateException("a simulated year failed", e.getCause());
        } finally {
            threads.shutdownNow();
        }
    }
}
