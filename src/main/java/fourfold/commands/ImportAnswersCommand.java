package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.ImportedAnswers;
import fourfold.log.Child;
import fourfold.words.SafeText;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Takes in answers from CSV, all of them or none. */
@Command(
        name = "answers",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold import answers answers.csv")
final class ImportAnswersCommand implements Callable<Integer> {
    private static final long LARGEST = 512L << 20;

    @ParentCommand
    private ImportCommand parent;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "${bundle:label.file}", descriptionKey = "file")
    private String name;

    @Option(names = "--yes")
    private boolean yes;

    @Override
    public Integer call() throws IOException {
        String text = text(Home.path(name));
        try (Home home = parent.app().open()) {
            ImportedAnswers imported = read(home, text);
            tell(imported);
            if (!yes) {
                say("Nothing was changed. Add --yes to do it.");
                return ExitCode.DONE;
            }
            home.importAnswers().keep(imported);
            say("Done.");
        }
        return ExitCode.DONE;
    }

    private ImportedAnswers read(Home home, String text) {
        try {
            return home.importAnswers()
                    .read(new StringReader(text), home.moments().now());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), name + ", " + e.getMessage() + ". Nothing was changed.", e);
        }
    }

    /** The file as text; the mark that some spreadsheets put before UTF-8 is passed over. */
    private String text(Path file) throws IOException {
        try {
            if (Files.isRegularFile(file) && Files.size(file) > LARGEST) {
                throw new ParameterException(spec.commandLine(), name + " is larger than any log of answers");
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new ParameterException(
                    spec.commandLine(), name + " is no text in UTF-8. Save it as \"CSV UTF-8\".", e);
        } catch (NoSuchFileException e) {
            throw new UncheckedIOException("There is no file " + file + ". Check its name.", e);
        } catch (IOException e) {
            throw new UncheckedIOException("The file " + file + " can't be read. Check that it is a file of yours.", e);
        }
    }

    private void tell(ImportedAnswers imported) {
        say(name + ": " + imported.fresh() + " new answers in " + imported.drills() + " new drills; " + imported.known()
                + " answers are here already.");
        if (!imported.newChildren().isEmpty()) {
            say("New children: "
                    + imported.newChildren().stream().map(Child::name).collect(Collectors.joining(", ")));
        }
    }

    private void say(String line) {
        parent.app().world().out().println(SafeText.safe(line));
    }
}
