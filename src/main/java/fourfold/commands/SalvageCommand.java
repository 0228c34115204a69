// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Backups;
import fourfold.upkeep.RowCounts.Kind;
import fourfold.upkeep.Salvage;
import fourfold.words.SafeText;
import fourfold.words.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Writes what can be read of a damaged file to a new one. */
@Command(name = "salvage", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold salvage saved.db")
final class SalvageCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Parameters(paramLabel = "${bundle:label.newfile}", descriptionKey = "file")
    private String fresh;

    @Override
    public Integer call() {
        Path file = app.place();
        Words words = app.words();
        List<Path> backups = Backups.of(file).all().stream().map(Backup::file).toList();
        Salvage saved = LongWork.of(
                app,
                advance -> Salvage.of(
                        file, backups, Home.path(fresh), number -> words.say("salvaged.name", number), advance));
        saved.passedOver().forEach(failure -> say(words.failure(failure)));
        say(words.say(
                "command.salvage.saved",
                fresh,
                words.counted(
                        "count.children",
                        saved.saved().of(Kind.CHILD),
                        saved.saved().of(Kind.CHILD)),
                words.counted(
                        "count.drills",
                        saved.saved().of(Kind.DRILL),
                        saved.saved().of(Kind.DRILL)),
                words.counted(
                        "count.answers",
                        saved.saved().of(Kind.ANSWER),
                        saved.saved().of(Kind.ANSWER)),
                words.counted(
                        "count.changes",
                        saved.saved().of(Kind.ACTION),
                        saved.saved().of(Kind.ACTION))));
        say(
                saved.lost() == 0
                        ? words.say("command.salvage.whole")
                        : words.counted("command.salvage.lost", saved.lost(), saved.lost()));
        return ExitCode.DONE;
    }

    private void say(String line) {
        app.world().out().println(SafeText.safe(line));
    }
}
