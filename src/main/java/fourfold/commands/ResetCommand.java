package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Begin a family, a table or all families again. No answer is deleted. */
@Command(
        name = "reset",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Begin a family, a table or all families again. No answer is deleted.",
        footer = {"", "Example:", "  fourfold reset 6x7 --child Mina"})
final class ResetCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "WHAT", converter = FamilyArgument.Reader.class, description = FamilyArgument.HELP)
    private FamilyArgument scope;

    @Option(names = "--yes", description = "Really do it to all families.")
    private boolean yes;

    @Override
    public Integer call() {
        scope.confirm(yes, spec);
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            home.steering()
                    .keep(
                            whose,
                            scope.families().stream()
                                    .<ParentAction>map(ParentAction.Reset::new)
                                    .toList(),
                            home.moments().now());
            app.world().out().println(scope.name() + ": begun again. No answer was deleted.");
            return ExitCode.DONE;
        }
    }
}
