// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.ParentAction;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.IntFunction;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Does something to a whole table. */
abstract class WholeTable implements Callable<Integer> {
    private final IntFunction<ParentAction> action;
    private final String done;

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "${bundle:label.table}",
            converter = FamilyArgument.TableReader.class,
            descriptionKey = "table")
    private int table;

    /**
     * A command.
     *
     * @param action what is done to a table
     * @param done the text that says it was
     */
    WholeTable(IntFunction<ParentAction> action, String done) {
        this.action = action;
        this.done = done;
    }

    @Override
    public Integer call() {
        try (Home home = app.open()) {
            home.steering()
                    .keep(
                            app.child(home, spec),
                            List.of(action.apply(table)),
                            home.moments().now());
            app.world().out().println(app.words().say(done, table));
            return ExitCode.DONE;
        }
    }
}
