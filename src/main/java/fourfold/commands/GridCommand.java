// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.Standing;
import fourfold.insight.Grid;
import fourfold.log.Child;
import fourfold.plain.GridText;
import fourfold.records.ProgressJson;
import fourfold.words.ActionWords;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints a child's grid. */
@Command(name = "grid", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold grid --child Mina")
final class GridCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Instant now = home.moments().now();
            Standing standing = home.records().standing(whose);
            Grid grid = Grid.of(standing.progress(), now);
            if (json) {
                app.world().out().print(ProgressJson.grid(whose.name(), grid, standing.stones()));
            } else if (plain) {
                app.world()
                        .out()
                        .print(GridText.sentences(
                                app.words(home),
                                whose.name(),
                                grid,
                                home.records().levelsAt(whose, now.minus(Duration.ofDays(7))),
                                standing.stones(),
                                ActionWords.inForce(app.words(home), standing.progress()),
                                app.world().unicode()));
            } else {
                GridText.write(
                        app.world().out(),
                        app.words(home),
                        whose.name(),
                        grid,
                        standing.stones(),
                        ActionWords.inForce(app.words(home), standing.progress()),
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }
}
