package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.ParentAction;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Open a table now, whatever the order says. */
@Command(name = "open", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold open 7 --child Mina")
final class OpenCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "${bundle:label.table}",
            converter = FamilyArgument.TableReader.class,
            descriptionKey = "table")
    private int table;

    @Override
    public Integer call() {
        try (Home home = app.open()) {
            home.steering()
                    .keep(
                            app.child(home, spec),
                            List.of(new ParentAction.OpenTable(table)),
                            home.moments().now());
            app.world().out().println(app.words().say("command.open.done", table));
            return ExitCode.DONE;
        }
    }
}
