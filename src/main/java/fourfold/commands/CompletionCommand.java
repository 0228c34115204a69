// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;

/** Prints what makes a shell complete this program's commands and options. */
@Command(name = "completion", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold completion")
final class CompletionCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Override
    public Integer call() {
        CommandLine all = CommandList.all(app.world());
        app.world().out().print(AutoComplete.bash(all.getCommandName(), all));
        return ExitCode.DONE;
    }
}
