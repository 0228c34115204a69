// SPDX-License-Identifier: Apache-2.0
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
@Command(name = "backup", mixinStandardHelpOptions = true, sortOptions = false, footer = "  fourfold backup --list")
final class BackupCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Option(names = "--list")
    private boolean list;

    @Option(names = "--to", paramLabel = "${bundle:label.file}")
    private @Nullable String to;

    @Override
    public Integer call() {
        Backups backups = Backups.of(app.place());
        if (list) {
            backups.all().forEach(this::print);
            return ExitCode.DONE;
        }
        try (Home home = app.open()) {
            LocalDate today =
                    LocalDate.ofInstant(home.moments().now(), home.moments().zone());
            String name = to;
            print(LongWork.of(
                    app,
                    advance -> name == null
                            ? backups.named(today + "-by-hand", advance)
                            : backups.to(Home.path(name), advance)));
        }
        return ExitCode.DONE;
    }

    private void print(Backup backup) {
        app.world().out().println(SafeText.safe(backup.name() + "  " + backup.file()));
    }
}
