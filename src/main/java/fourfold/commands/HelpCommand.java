// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** Prints the help of the program or of one command. */
@Command(name = "help", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold help export answers")
final class HelpCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "${bundle:label.command}", descriptionKey = "command")
    private List<String> names = List.of();

    @Override
    public Integer call() {
        CommandLine command = CommandList.all(app.world());
        for (String name : names) {
            CommandLine below = command.getSubcommands().get(name);
            if (below == null) {
                throw new UnmatchedArgumentException(command, List.of(name));
            }
            command = below;
        }
        command.setColorScheme(spec.commandLine().getColorScheme())
                .usage(app.world().out());
        return ExitCode.DONE;
    }
}
