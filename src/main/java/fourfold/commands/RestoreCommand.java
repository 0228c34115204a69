// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.screens.parent.CarePage;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Difference;
import fourfold.upkeep.Restoration;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Puts a backup in the place of the family's file, which is kept aside. */
@Command(name = "restore", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold restore")
final class RestoreCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "${bundle:label.backup}", descriptionKey = "backup")
    private @Nullable String name;

    @Option(names = "--yes")
    private boolean yes;

    @Override
    public Integer call() {
        Path file = app.place();
        Path backup = name == null ? lastGood(file) : named(file, name);
        if (!yes) {
            Restoration.check(backup);
            Difference difference = LongWork.of(app, () -> Difference.of(file, backup));
            Words words = app.words();
            say(words.say("care.restore.gained", CarePage.counts(words, difference.gained())));
            say(difference
                    .lost()
                    .map(lost -> words.say("care.restore.lost", CarePage.counts(words, lost)))
                    .orElseGet(() -> words.say("care.restore.unknown")));
            say(words.say("command.restore.preview", backup, file));
            return ExitCode.DONE;
        }
        Restoration.Done done = LongWork.of(app, () -> Restoration.of(file, backup));
        say(app.words().say("command.restore.done", done.backup()));
        done.aside().ifPresent(aside -> say(app.words().say("command.restore.aside", aside)));
        return ExitCode.DONE;
    }

    private Path lastGood(Path file) {
        return Backups.of(file)
                .lastGood()
                .map(Backup::file)
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        app.words().say("command.restore.none", Backups.of(file).folder())));
    }

    private static Path named(Path file, String name) {
        return Backups.of(file).all().stream()
                .filter(b -> b.name().equals(name))
                .map(Backup::file)
                .findFirst()
                .orElseGet(() -> Home.path(name));
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
