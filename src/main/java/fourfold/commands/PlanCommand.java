package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.Records;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.outlook.Projection;
import fourfold.plain.PlanText;
import fourfold.progress.Progress;
import fourfold.records.PlanJson;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints a child's plan. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Print the days of practice, how far each table has come, and when all may be fluent.",
        footer = {"", "Example:", "  fourfold plan --child Mina --runs 2"})
final class PlanCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json", description = "As JSON.")
    private boolean json;

    @Option(
            names = "--runs",
            paramLabel = "N",
            defaultValue = "20",
            description = "How often the way is played through: 1 to 1000, up to a second each. Default: 20.")
    private int runs;

    @Override
    public Integer call() throws IOException {
        if (runs < 1 || runs > 1000) {
            throw new ParameterException(spec.commandLine(), "--runs is from 1 to 1000, not " + runs);
        }
        try (Home home = app.open()) {
            Child whose = home.child(app.child(), spec);
            Progress progress = home.records().progress(whose);
            Instant now = home.moments().now();
            Weeks weeks = Weeks.of(
                    home.store().sittings(whose.id()),
                    progress.localDay(now),
                    progress.steering().settings().days());
            Optional<Projection> projection = projection(home.records().ahead(progress, weeks.usualDays(), now));
            projection.ifPresent(p -> home.records().foreseen(whose, p, now));
            List<TableCount> tables = TableCount.of(progress);
            if (json) {
                app.world().out().print(PlanJson.plan(whose.name(), weeks, tables, projection));
            } else {
                PlanText.write(
                        app.world().out(),
                        home.records().words(),
                        whose.name(),
                        weeks,
                        tables,
                        projection,
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }

    private Optional<Projection> projection(Records.Ahead ahead) {
        if (!ahead.isPossible()) {
            return Optional.empty();
        }
        for (int run = 0; run < runs; run++) {
            ahead.playOnce();
        }
        return Optional.of(ahead.projection());
    }
}
