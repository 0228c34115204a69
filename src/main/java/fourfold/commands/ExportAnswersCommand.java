package fourfold.commands;

import fourfold.export.AnswersCsv;
import fourfold.facts.Child;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
        description = "Write every answer as CSV (RFC 4180).")
final class ExportAnswersCommand implements Callable<Integer> {
    @ParentCommand
    private ExportCommand export;

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "The file to make; it must not be there yet. Without it, the standard output.")
    private @Nullable Path file;

    @Override
    public Integer call() throws IOException {
        try (Home home = export.app().open()) {
            List<Child> whose = export.app().child().isPresent()
                    ? List.of(home.child(export.app().child(), spec))
                    : home.store().children();
            if (file == null) {
                write(home, whose, export.app().world().data());
            } else {
                writeFile(home, whose, file);
            }
            return ExitCode.DONE;
        }
    }

    private static void writeFile(Home home, List<Child> whose, Path file) {
        boolean made = false;
        boolean whole = false;
        try (BufferedWriter writer =
                Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
            made = true;
            write(home, whose, writer);
            writer.flush();
            whole = true;
        } catch (FileAlreadyExistsException e) {
            throw new UncheckedIOException(
                    "The file " + file + " is already there. Choose another name or remove it first.", e);
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "The answers could not be written to " + file + ": " + reason(e) + ". Name another file.", e);
        } finally {
            if (made && !whole) {
                remove(file);
            }
        }
    }

    private static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such folder";
        }
        if (e instanceof AccessDeniedException) {
            return "the system does not allow it";
        }
        return e instanceof FileSystemException system && system.getReason() != null
                ? system.getReason()
                : String.valueOf(e.getMessage());
    }

    /** Half a file would be taken for a whole one. */
    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The failure before this one is already being told.
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
