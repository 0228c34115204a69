// SPDX-License-Identifier: Apache-2.0
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
        footer = "  fourfold focus 6x7 --child Mina")
final class FocusCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "${bundle:label.what}", converter = FamilyArgument.Reader.class, descriptionKey = "scope")
    private FamilyArgument scope;

    @Option(names = "--end")
    private boolean end;

    @Option(names = "--yes", descriptionKey = "yes.all")
    private boolean yes;

    @Override
    public Integer call() {
        scope.confirm(yes, spec, app.words());
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
                    .println(app.words().say(end ? "steer.nofocus" : "command.focus.done", scope.name(app.words())));
            return ExitCode.DONE;
        }
    }
}
