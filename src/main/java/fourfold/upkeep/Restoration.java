package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.DatabaseCopy;
import fourfold.store.Failure;
import fourfold.store.FileHead;
import fourfold.store.Journal;
import fourfold.store.Rights;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Puts a backup in the place of the family's file. The present file, damaged or not, is kept aside under another name,
 * with all that its log holds; at no moment is there no file, so a program that is killed here leaves the old file or the
 * new one.
 */
public final class Restoration {
    private final Path file;

    private Restoration(Path file) {
        this.file = file.toAbsolutePath().normalize();
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
        return new Restoration(file).from(backup);
    }

    private Done from(Path backup) {
        Path unfinished = file.resolveSibling(file.getFileName() + ".unfinished");
        try {
            if (FileHead.of(backup) != FileHead.OURS) {
                throw new RecordsFailure(Task.RESTORE, Failure.shown(backup), Problem.of(Reason.NO_BACKUP));
            }
            Files.deleteIfExists(unfinished);
            Rights.makeFile(unfinished);
            copyWhole(backup, unfinished);
            bringIntoOneFile();
            Optional<Path> aside =
                    Stream.of(file, Journal.log(file), Journal.rollback(file)).anyMatch(Files::exists)
                            ? Optional.of(putAside())
                            : Optional.empty();
            DatabaseCopy.name(unfinished, file);
            return new Done(backup, aside);
        } catch (SQLException e) {
            throw failed(backup, Failure.problem(e), e);
        } catch (IOException e) {
            throw failed(backup, Failure.problem(e), e);
        }
    }

    /** Damage of the backup is found before anything is changed. */
    private static void copyWhole(Path backup, Path unfinished) throws IOException, SQLException {
        try (PrivateCopy copy = PrivateCopy.of(backup)) {
            DatabaseCopy.check(copy.file());
            try (Connection connection = Connections.reading(copy.file())) {
                DatabaseCopy.fill(unfinished, connection);
            }
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
                    throw heldOpen(e);
                }
                throw e;
            }
        }
    }

    private RecordsFailure heldOpen(SQLException cause) {
        return new RecordsFailure(Task.RESTORE, Failure.shown(file), Problem.of(Reason.HELD_OPEN), cause);
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

    /** Keeps the file under a second name, with what is left of writes that a damaged file could not take in. */
    private Path putAside() throws IOException {
        Path aside = DatabaseCopy.fresh(file, "aside");
        if (Files.exists(file)) {
            copyOrLink(file, aside);
        }
        List<Path> left = List.of(Journal.log(file), Journal.rollback(file));
        for (Path beside : left) {
            if (Files.exists(beside)) {
                copyOrLink(
                        beside,
                        aside.resolveSibling(String.valueOf(beside.getFileName())
                                .replace(String.valueOf(file.getFileName()), String.valueOf(aside.getFileName()))));
            }
        }
        // Only now that both are kept: beside the new file they would be taken for its own and destroy it.
        for (Path beside : left) {
            Files.deleteIfExists(beside);
        }
        Files.deleteIfExists(Journal.beside(file, "-shm"));
        return aside;
    }

    private static void copyOrLink(Path from, Path to) throws IOException {
        Files.deleteIfExists(to);
        try {
            Files.createLink(to, from);
        } catch (IOException | UnsupportedOperationException e) {
            Files.copy(from, to, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }

    private RecordsFailure failed(Path backup, Problem problem, Exception cause) {
        return new RecordsFailure(Task.RESTORE_TO, List.of(Failure.shown(backup), Failure.shown(file)), problem, cause);
    }
}
