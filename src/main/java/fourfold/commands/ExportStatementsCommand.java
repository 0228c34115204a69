// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.records.Statements;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Writes the answers to questions as learning-record statements. */
@Command(
        name = "statements",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold export statements --child Mina")
final class ExportStatementsCommand implements Callable<Integer> {
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
                write(home, whose, export.app().world().data());
            } else {
                export.app().make(file, writer -> write(home, whose, writer));
            }
            return ExitCode.DONE;
        }
    }

    private static void write(Home home, List<Child> whose, Writer writer) throws IOException {
        for (Child one : whose) {
            try {
                home.records().read(one, answer -> line(writer, answer, one.name()));
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
        }
        writer.flush();
    }

    private static void line(Writer writer, Answer answer, String name) {
        if (answer.question().isPresent()) {
            try {
                writer.write(Statements.of(answer, name) + "\n");
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
