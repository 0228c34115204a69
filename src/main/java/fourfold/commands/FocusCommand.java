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

/** Practise a family, a table or all families more, until it is fluent. */
@Command(
        name = "focus",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Practise a family, a table or all families more, until it is fluent.",
        footer = {"", "Example:", "  fourfold focus 6x7 --child Mina"})
final class FocusCommand implements Callable<Integer> {
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
                                            f -> end ? new ParentAction.Release(f) : new ParentAction.Focus(f))
                                    .toList(),
                            home.moments().now());
            app.world()
                    .out()
                    .println(scope.name() + (end ? ": no longer in focus." : ": practised more, until fluent."));
            return ExitCode.DONE;
        }
    }
}
