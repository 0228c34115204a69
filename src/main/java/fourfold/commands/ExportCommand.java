// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Writes records in open formats; its own commands say what exactly. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        subcommands = {ExportAnswersCommand.class, ExportStatementsCommand.class},
        footer = "  fourfold export answers")
final class ExportCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    App app() {
        return app;
    }

    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), app.words().say("command.export.what"));
    }
}
