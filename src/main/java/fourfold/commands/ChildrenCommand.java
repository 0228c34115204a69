package fourfold.commands;

import fourfold.export.PlainText;
import fourfold.facts.Child;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Lists the children, or adds one. */
@Command(
        name = "children",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "List the children who practise here; with --add, add one first.")
final class ChildrenCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--add",
            paramLabel = "NAME",
            description = "Add a child: a first name or nickname of 1 to 40 characters.")
    private @Nullable String added;

    @Override
    public Integer call() {
        try (Home home = app.open()) {
            if (added != null) {
                add(home, added);
            }
            List<Child> listed = app.child().isPresent()
                    ? List.of(home.child(app.child(), spec))
                    : home.store().children();
            listed.forEach(child -> app.world().out().println(PlainText.safe(child.name())));
            return ExitCode.DONE;
        }
    }

    private void add(Home home, String name) {
        try {
            Child.checkName(name);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
        home.records().add(name, home.moments().now());
    }
}
