// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.facts.Operation;
import fourfold.home.Home;
import fourfold.log.ParentAction;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Say that a table's multiplication or division was taught at home today. */
@Command(
        name = "taught",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold taught 7 divide --child Mina")
final class TaughtCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "${bundle:label.table}",
            converter = FamilyArgument.TableReader.class,
            descriptionKey = "table")
    private int table;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "multiply|divide",
            defaultValue = "multiply",
            descriptionKey = "lesson")
    private String lesson = "";

    @Override
    public Integer call() {
        if (!List.of("multiply", "divide").contains(lesson)) {
            throw new ParameterException(
                    spec.commandLine(),
                    app.words().say("command.settings.value", "taught", "multiply, divide", lesson));
        }
        try (Home home = app.open()) {
            Operation operation = Operation.ofWord(lesson);
            home.steering()
                    .keep(
                            app.child(home, spec),
                            List.of(new ParentAction.Taught(table, operation)),
                            home.moments().now());
            app.world().out().println(app.words(home).say("command.taught." + operation.word(), table));
            return ExitCode.DONE;
        }
    }
}
