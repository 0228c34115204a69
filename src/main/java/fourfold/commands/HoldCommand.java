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

/** Leave a family, a table or all families out for now. */
@Command(
        name = "hold",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Leave a family, a table or all families out for now.",
        footer = {"", "Example:", "  fourfold hold 7 --child Mina"})
final class HoldCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "WHAT", converter = FamilyArgument.Reader.class, description = FamilyArgument.HELP)
    private FamilyArgument scope;

    @Option(names = "--end", description = "End it: neither focus nor hold any longer.")
    private boolean end;

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
                                    .<ParentAction>map(
                                            f -> end ? new ParentAction.Release(f) : new ParentAction.Hold(f))
                                    .toList(),
                            home.moments().now());
            app.world().out().println(scope.name() + (end ? ": practised again." : ": left out for now."));
            return ExitCode.DONE;
        }
    }
}
