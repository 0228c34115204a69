// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.screens.child.Tour;
import fourfold.terminal.PageLoop;
import fourfold.terminal.TerminalException;
import fourfold.terminal.TerminalSession;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;

/** Shows the program by itself. */
@Command(name = "tour", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold tour --help")
final class TourCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Override
    public Integer call() throws TerminalException {
        try (Home home = Home.open(app.world(), Optional.empty(), true);
                TerminalSession stage = home.stage(app.world())) {
            PageLoop loop = app.loop(home, stage, app.firstPage(home, stage));
            new Tour(stage, loop, home.children().list().size(), "Lu").run();
            return ExitCode.DONE;
        }
    }
}
