// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.BackupFiles;
import fourfold.store.Connections;
import fourfold.store.DatabaseCopy;
import fourfold.store.Failure;
import fourfold.store.Rights;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The backups of one family's file, in a folder beside it that only its owner can read: {@code fourfold-backups} beside
 * {@code fourfold.db}. Each is read whole and checked when it is made, before it gets its name; one that is there is
 * never written again. The file may be in use meanwhile.
 */
public final class Backups {
    private static final String UNFINISHED = ".unfinished";

    private final Path file;
    private final BackupFiles files;
    private final Path folder;

    private Backups(Path file) {
        this.file = file.toAbsolutePath().normalize();
        this.files = BackupFiles.of(this.file);
        this.folder = files.folder();
    }

    /** The backups of this file, whether there are any or not. */
    public static Backups of(Path file) {
        return new Backups(file);
    }

    /** Where they are. */
    public Path folder() {
        return folder;
    }

    /**
     * Makes the day's backup and thins out older ones, unless the day has one.
     *
     * @param day the local day
     * @return the backup, if one was made
     * @throws RecordsFailure if it can't be made; older backups are then left alone
     */
    public Optional<Backup> ofDay(LocalDate day) {
        if (Files.exists(folder.resolve(day + BackupFiles.ENDING))) {
            return Optional.empty();
        }
        Backup made = make(day.toString(), Advance.UNSEEN);
        thinOut(day);
        return Optional.of(made);
    }

    /**
     * Makes a backup with a name of its own, which is never thinned out, such as before something is removed.
     *
     * @param name letters, digits and hyphens; a number is added if there is one of that name
     */
    public Backup named(String name) {
        return named(name, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public Backup named(String name, Advance advance) {
        String free = name;
        for (int number = 2; Files.exists(folder.resolve(free + BackupFiles.ENDING)); number++) {
            free = name + "-" + number;
        }
        return make(free, advance);
    }

    /** All backups, the newest first by when they were made; with the copies beside the file made before migrations. */
    public List<Backup> all() {
        try {
            return files.all().stream().map(Backups::backup).toList();
        } catch (IOException e) {
            throw failed(Task.LOOK_AT_BACKUPS, e);
        }
    }

    private static Backup backup(Path path) {
        return new Backup(path, BackupFiles.stem(path));
    }

    /** The newest backup that is whole today; damaged ones are passed over. */
    public Optional<Backup> lastGood() {
        try {
            return files.lastGood().map(Backups::backup);
        } catch (IOException e) {
            throw failed(Task.LOOK_AT_BACKUPS, e);
        }
    }

    /**
     * Makes a copy in a place of its own, such as on a stick: one file that is whole by itself.
     *
     * @throws RecordsFailure if there is such a file already, or it can't be made
     */
    public Backup to(Path target) {
        return to(target, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public Backup to(Path target, Advance advance) {
        Path whole = target.toAbsolutePath().normalize();
        if (Files.exists(whole)) {
            throw new RecordsFailure(Task.COPY, Failure.shown(whole), Problem.of(Reason.FILE_EXISTS));
        }
        return make(whole, BackupFiles.stem(whole), advance);
    }

    private Backup make(String name, Advance advance) {
        try {
            Rights.makeFolder(folder);
        } catch (IOException e) {
            throw failed(Task.MAKE_BACKUP, e);
        }
        return make(folder.resolve(name + BackupFiles.ENDING), name, advance);
    }

    private Backup make(Path made, String name, Advance advance) {
        Path unfinished = made.resolveSibling(name + UNFINISHED);
        try {
            Files.deleteIfExists(unfinished);
            Rights.makeFile(unfinished);
            try (Connection connection = Connections.reading(file)) {
                DatabaseCopy.fill(unfinished, connection, Files.size(file), advance::to);
            }
            DatabaseCopy.name(unfinished, made);
            return new Backup(made, name);
        } catch (SQLException e) {
            throw failed(Failure.problem(e), e, unfinished);
        } catch (IOException e) {
            throw failed(Failure.problem(e), e, unfinished);
        }
    }

    private void thinOut(LocalDate today) {
        Map<LocalDate, Path> days = new TreeMap<>();
        for (Backup backup : all()) {
            day(backup.name()).ifPresent(day -> days.put(day, backup.file()));
        }
        Set<LocalDate> kept = BackupRetention.kept(days.keySet());
        days.forEach((day, path) -> {
            if (!kept.contains(day) && !day.equals(today)) {
                remove(path);
            }
        });
    }

    private void remove(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            throw failed(Task.THIN_OUT_BACKUPS, e);
        }
    }

    private static Optional<LocalDate> day(String name) {
        try {
            return Optional.of(LocalDate.parse(name));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static RecordsFailure failed(Problem problem, Exception cause, Path half) {
        RecordsFailure failed =
                new RecordsFailure(Task.MAKE_BACKUP, Failure.shown(half.resolveSibling("")), problem, cause);
        try {
            Files.deleteIfExists(half);
        } catch (IOException e) {
            failed.addSuppressed(e);
        }
        return failed;
    }

    private RecordsFailure failed(Task task, IOException cause) {
        return new RecordsFailure(task, Failure.shown(folder), Failure.problem(cause), cause);
    }
}
