package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Salvage;
import fourfold.words.SafeText;
import java.nio.file.Path;
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
        Salvage saved = Salvage.of(file, Backups.of(file).lastGood().map(Backup::file), Home.path(fresh));
        app.world()
                .out()
                .println(SafeText.safe("Saved to " + fresh + ": " + saved.children() + " children, " + saved.drills()
                        + " drills, " + saved.answers() + " answers, " + saved.acts() + " changes by parents."));
        app.world()
                .out()
                .println(
                        saved.lost() == 0
                                ? "Nothing that was there was unreadable."
                                : saved.lost() + " rows could not be made out or belong to something that is gone.");
        return ExitCode.DONE;
    }
}
