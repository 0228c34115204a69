// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.Child;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Writes the answer log as CSV. */
@Command(
        name = "answers",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold export answers answers.csv")
final class ExportAnswersCommand implements Callable<Integer> {
    @ParentCommand
    private ExportCommand export;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "${bundle:label.file}", descriptionKey = "file.new")
    private @Nullable Path file;

    @Override
    public Integer call() throws IOException {
        try (Home home = export.app().open()) {
            List<Child> whose = export.app().child().isPresent()
                    ? List.of(export.app().child(home, spec))
                    : home.children().list();
            if (file == null) {
                home.records().write(whose, export.app().world().data());
            } else {
                export.app().make(file, writer -> home.records().write(whose, writer));
            }
            return ExitCode.DONE;
        }
    }
}
