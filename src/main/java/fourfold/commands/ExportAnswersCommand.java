package fourfold.commands;

import fourfold.export.AnswersCsv;
import fourfold.facts.Child;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Writes the answer log as CSV. */
@Command(name = "answers", mixinStandardHelpOptions = true, description = "Write every answer as CSV (RFC 4180).")
final class ExportAnswersCommand implements Callable<Integer> {
    @ParentCommand
    private ExportCommand export;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ChildOption child;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "The file to make; it must not be there yet. Without it, the standard output.")
    private @Nullable Path file;

    @Override
    public Integer call() throws IOException {
        try (Home home = export.app().open()) {
            List<Child> whose = child.name().isPresent()
                    ? List.of(home.child(child.name(), spec))
                    : home.store().children();
            if (file == null) {
                write(home, whose, export.app().world().out());
            } else {
                writeFile(home, whose, file);
            }
            return ExitCode.DONE;
        }
    }

    private static void writeFile(Home home, List<Child> whose, Path file) throws IOException {
        try (BufferedWriter writer =
                Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
            write(home, whose, writer);
        } catch (FileAlreadyExistsException e) {
            throw new UncheckedIOException(
                    "The file " + file + " is already there. Choose another name or remove it first.", e);
        }
    }

    private static void write(Home home, List<Child> whose, Writer writer) throws IOException {
        AnswersCsv.Sheet sheet = new AnswersCsv.Sheet(writer);
        for (Child one : whose) {
            home.store().readAnswers(one.id(), answer -> sheet.write(answer, one.name()));
        }
        sheet.flush();
    }
}
