package fourfold.commands;

import fourfold.home.Home;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Backups;
import fourfold.words.SafeText;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Makes a backup now, or lists those there are. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Make a backup now and check it. One is made by itself after each day's first drill.",
        footer = {"", "Example:", "  fourfold backup --list"})
final class BackupCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Option(names = "--list", description = "Only list the backups, the newest first.")
    private boolean list;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            description =
                    "Copy the answers to this new file, which is whole by itself; also while the program is open.")
    private @Nullable String to;

    @Override
    public Integer call() {
        Backups backups = Backups.of(app.place());
        if (list) {
            backups.all().forEach(this::tell);
            return ExitCode.DONE;
        }
        try (Home home = app.open()) {
            LocalDate today =
                    LocalDate.ofInstant(home.moments().now(), home.moments().zone());
            tell(to == null ? backups.named(today + "-by-hand") : backups.to(Home.path(to)));
        }
        return ExitCode.DONE;
    }

    private void tell(Backup backup) {
        app.world().out().println(SafeText.safe(backup.name() + "  " + backup.file()));
    }
}
