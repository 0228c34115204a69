package fourfold.commands;

import fourfold.home.Home;
import fourfold.insight.Grid;
import fourfold.log.Child;
import fourfold.plain.GridText;
import fourfold.records.ProgressJson;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints a child's grid. */
@Command(
        name = "grid",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Print a child's families and how far each has come.",
        footer = {"", "Example:", "  fourfold grid --child Mina"})
final class GridCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json", description = "As JSON.")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = home.child(app.child(), spec);
            Grid grid = Grid.of(home.records().progress(whose), home.moments().now());
            if (json) {
                app.world().out().print(ProgressJson.grid(whose.name(), grid));
            } else {
                GridText.write(
                        app.world().out(),
                        home.records().words(),
                        whose.name(),
                        grid,
                        app.world().unicode());
            }
            return ExitCode.DONE;
        }
    }
}
