// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;

/** Prints the manual page. */
@Command(name = "manual", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold manual")
final class ManualCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Override
    public Integer call() {
        app.world().out().print(new ManualPage(CommandList.all(app.world())).text());
        return ExitCode.DONE;
    }
}
