// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.plain.HomeText;
import fourfold.plain.Signs;
import fourfold.records.ActionsJson;
import fourfold.screens.parent.HistoryPage;
import fourfold.words.SafeText;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints what a parent did to steer a child's practice. */
@Command(
        name = "history",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold history --child Mina")
final class HistoryCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            if (json) {
                app.world()
                        .out()
                        .print(ActionsJson.of(whose.name(), home.records().actions(whose)));
                return ExitCode.DONE;
            }
            if (plain) {
                app.world()
                        .out()
                        .print(HomeText.history(
                                app.words(home),
                                home.records().actions(whose),
                                app.world().unicode()));
                return ExitCode.DONE;
            }
            HistoryPage.lines(app.words(home), home.records().actions(whose))
                    .forEach(line -> app.world()
                            .out()
                            .println(Signs.printable(
                                    SafeText.safe(line), app.world().unicode())));
            return ExitCode.DONE;
        }
    }
}
