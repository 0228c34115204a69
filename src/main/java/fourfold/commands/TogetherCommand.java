// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.TwoComputers;
import fourfold.upkeep.SharedFolder;
import fourfold.words.SafeText;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Two computers of one household that meet in a folder. */
@Command(name = "together", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold together")
final class TogetherCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "${bundle:label.folder}", descriptionKey = "folder")
    private @Nullable String folder;

    @Option(names = "--called", paramLabel = "${bundle:label.name}")
    private String called = "computer";

    @Option(names = "--stop")
    private boolean stop;

    @Override
    public Integer call() {
        app.place();
        if (stop && folder != null) {
            throw new ParameterException(spec.commandLine(), app.words().say("command.together.both"));
        }
        try (Home home = app.open()) {
            TwoComputers together = home.together();
            if (stop) {
                together.stop();
            } else if (folder != null) {
                app.tell(
                        together.setUp(Home.path(folder), called, home.moments().now()));
            } else {
                app.tell(together.takeIn(home.moments().now()));
                together.lay();
            }
            print(home, together.state());
        }
        return ExitCode.DONE;
    }

    private void print(Home home, TwoComputers.State state) {
        if (state.folder().isEmpty()) {
            say(app.words().say("together.none"));
            return;
        }
        say(app.words().say("together.in", state.folder().get()));
        for (SharedFolder.Laid laid : state.there()) {
            LocalDate day = LocalDate.ofInstant(laid.at(), home.moments().zone());
            say("  " + laid.computer() + "  " + app.words().date(day)
                    + (laid.computer().equals(state.own()) ? "  " + app.words().say("together.own") : ""));
        }
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
