// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.ImportedAnswers;
import fourfold.log.Child;
import fourfold.log.InvalidValue;
import fourfold.upkeep.ForeignFile;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
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
            print(imported);
            if (!yes) {
                say(words().say("command.nothing"));
                return ExitCode.DONE;
            }
            home.importAnswers().keep(imported);
            say(words().say("command.import.done"));
        }
        return ExitCode.DONE;
    }

    private ImportedAnswers read(Home home, String text) {
        try {
            return home.importAnswers()
                    .read(new StringReader(text), home.moments().now());
        } catch (InvalidValue e) {
            throw new ParameterException(
                    spec.commandLine(), words().say("command.import.problem", name, words().problem(e.problem())), e);
        }
    }

    private String text(Path file) throws IOException {
        try {
            return ForeignFile.text(file)
                    .orElseThrow(() ->
                            new ParameterException(spec.commandLine(), words().say("command.import.large", name)));
        } catch (CharacterCodingException e) {
            throw new ParameterException(spec.commandLine(), words().say("command.import.encoding", name), e);
        } catch (NoSuchFileException e) {
            throw new UncheckedIOException(words().say("command.import.missing", file), e);
        } catch (IOException e) {
            throw new UncheckedIOException(words().say("command.import.unreadable", file), e);
        }
    }

    private void print(ImportedAnswers imported) {
        say(words().say("command.import.counts", name, imported.fresh(), imported.drills(), imported.known()));
        if (!imported.newChildren().isEmpty()) {
            say(words().say(
                            "command.import.children",
                            imported.newChildren().stream().map(Child::name).collect(Collectors.joining(", "))));
        }
    }

    private Words words() {
        return parent.app().words();
    }

    private void say(String line) {
        parent.app().world().out().println(SafeText.safe(line));
    }
}
