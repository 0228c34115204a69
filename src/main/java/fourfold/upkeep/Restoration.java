// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.Disk;
import fourfold.store.Failure;
import fourfold.store.FileHead;
import fourfold.store.Journal;
import fourfold.store.Replacement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * Puts a backup in the place of the family's file. The present file, damaged or not, is kept aside under another name,
 * with all that its log holds; at no moment is there no file, so a program that is killed here leaves the old file or the
 * new one.
 */
public final class Restoration {
    private final Path file;
    private final Disk disk;

    private Restoration(Path file, Disk disk) {
        this.file = Journal.real(file);
        this.disk = disk;
    }

    /**
     * What was done.
     *
     * @param backup what was restored
     * @param aside where the file that was there before is now; empty if there was none
     */
    public record Done(Path backup, Optional<Path> aside) {}

    /**
     * Restores.
     *
     * @param file the family's file
     * @param backup the backup; it stays where it is
     * @throws RecordsFailure if the backup is not whole, or the file is in use
     */
    public static Done of(Path file, Path backup) {
        return of(file, backup, Disk.REAL);
    }

    /** The same on a disk that may stop before any step. */
    static Done of(Path file, Path backup, Disk disk) {
        return new Restoration(file, disk).from(backup);
    }

    /**
     * Makes sure that a backup can be restored, and changes nothing.
     *
     * @throws RecordsFailure if it is not there, not whole or not ours
     */
    public static void check(Path backup) {
        // Opening it looks at all of it, and closing it leaves nothing behind.
        ForeignFile.of(backup, Task.RESTORE, Reason.NO_BACKUP).close();
    }

    private Done from(Path backup) {
        // Damage of the backup, and whatever else no Fourfold writes, is found before anything is changed.
        try (ForeignFile taken = ForeignFile.of(backup, Task.RESTORE, Reason.NO_BACKUP);
                Replacement replacement = Replacement.begin(file, disk).orElseThrow(() -> heldOpen(Optional.empty()))) {
            bringIntoOneFile();
            return new Done(backup, replacement.with(taken.file()));
        } catch (SQLException e) {
            throw failed(backup, Failure.problem(e), e);
        } catch (IOException e) {
            throw failed(backup, Failure.problem(e), e);
        }
    }

    /**
     * Brings into the present file what its log holds, so that it is whole under whatever name, and makes sure that nobody
     * else has it open. A program that only reads can't be distinguished from a drill between two answers, as both hold the same lock; so
     * both are in the way. A damaged file is not written to: it is kept aside together with what stands beside it.
     */
    private void bringIntoOneFile() throws IOException, SQLException {
        if (Files.exists(file) && FileHead.of(file) == FileHead.OURS && isSound()) {
            try {
                Journal.intoOneFile(file);
            } catch (SQLException e) {
                if (Failure.isInUse(e)) {
                    throw heldOpen(Optional.of(e));
                }
                throw e;
            }
        }
    }

    private RecordsFailure heldOpen(Optional<SQLException> cause) {
        RecordsFailure failure = new RecordsFailure(Task.RESTORE, Failure.shown(file), Problem.of(Reason.HELD_OPEN));
        cause.ifPresent(failure::initCause);
        return failure;
    }

    private boolean isSound() throws SQLException {
        try (Connection connection = Connections.reading(file)) {
            return Database.query(connection, "PRAGMA quick_check(1)", none -> {}, row -> row.getString(1))
                    .equals(List.of("ok"));
        } catch (SQLException e) {
            if (Failure.isInUse(e)) {
                throw e;
            }
            return false;
        }
    }

    private RecordsFailure failed(Path backup, Problem problem, Exception cause) {
        return new RecordsFailure(Task.RESTORE_TO, List.of(Failure.shown(backup), Failure.shown(file)), problem, cause);
    }
}
