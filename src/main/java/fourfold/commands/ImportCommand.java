// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Takes records in; its own commands say what exactly. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        subcommands = ImportAnswersCommand.class,
        footer = "  fourfold import answers answers.csv")
final class ImportCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    App app() {
        return app;
    }

    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), app.words().say("command.import.what"));
    }
}
