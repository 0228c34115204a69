// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.outlook.YearAhead;
import fourfold.plain.PlanText;
import fourfold.progress.Progress;
import fourfold.records.PlanJson;
import fourfold.words.ActionWords;
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
        footer = "  fourfold plan --child Mina --runs 2")
final class PlanCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Option(names = "--runs", paramLabel = "${bundle:label.number}", defaultValue = "20")
    private int runs;

    @Override
    public Integer call() throws IOException {
        if (runs < 0 || runs > 1000) {
            throw new ParameterException(spec.commandLine(), app.words().say("command.plan.runs", runs));
        }
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Progress progress = home.records().progress(whose);
            Instant now = home.moments().now();
            Weeks weeks = Weeks.of(
                    home.records().sessions(whose),
                    progress.localDay(now),
                    progress.steering().settings().days());
            Optional<YearAhead> ahead = played(home, whose, now);
            List<TableCount> tables = TableCount.of(progress);
            if (json) {
                app.world().out().print(PlanJson.plan(whose.name(), weeks, tables, ahead));
            } else if (plain) {
                app.world()
                        .out()
                        .print(PlanText.sentences(
                                app.words(home),
                                whose.name(),
                                weeks,
                                ActionWords.inForce(app.words(home), progress),
                                tables,
                                ahead,
                                app.world().unicode()));
            } else {
                PlanText.write(
                        app.world().out(),
                        app.words(home),
                        whose.name(),
                        weeks,
                        ActionWords.inForce(app.words(home), progress),
                        tables,
                        ahead,
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }

    private Optional<YearAhead> played(Home home, Child whose, Instant now) {
        if (runs == 0) {
            return Optional.empty();
        }
        YearAhead ahead = home.lookAhead().begin(whose, now, runs);
        while (!ahead.isDone()) {
            ahead = ahead.step();
        }
        ahead.projection().ifPresent(p -> home.lookAhead().remember(whose, p, now));
        return Optional.of(ahead);
    }
}
