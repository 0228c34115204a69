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

/** Close a table: no new family comes from it. */
@Command(
        name = "close",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold close 7 --child Mina")
final class CloseCommand implements Callable<Integer> {
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
                            List.of(new ParentAction.CloseTable(table)),
                            home.moments().now());
            app.world().out().println(app.words().say("command.close.done", table));
            return ExitCode.DONE;
        }
    }
}
