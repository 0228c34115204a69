package fourfold.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

/**
 * Puts a backup in the place of the family's file. The present file, damaged or not, is kept aside under another name
 * and never written; at no moment is there no file, so a program that is killed here leaves the old file or the new one.
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
     * @throws StoreException if the backup is not whole, or the file is in use
     */
    public static Done of(Path file, Path backup) {
        return new Restoration(file).from(backup);
    }

    private Done from(Path backup) {
        Path unfinished = file.resolveSibling(file.getFileName() + ".unfinished");
        try {
            if (FileHead.of(backup) != FileHead.OURS) {
                throw new StoreException("could not restore " + Failure.shown(backup) + ": it is not a Fourfold file;"
                        + " choose another backup");
            }
            Copy.check(backup);
            refuseIfInUse();
            Files.deleteIfExists(unfinished);
            Rights.makeFile(unfinished);
            Files.copy(backup, unfinished, StandardCopyOption.REPLACE_EXISTING);
            Rights.keepToOwner(unfinished);
            Copy.force(unfinished);
            Copy.check(unfinished);
            Optional<Path> aside = Files.exists(file) ? Optional.of(putAside()) : Optional.empty();
            Copy.name(unfinished, file);
            return new Done(backup, aside);
        } catch (SQLException e) {
            throw failed(backup, Failure.reason(e), e);
        } catch (IOException e) {
            throw failed(backup, Failure.reason(e), e);
        }
    }

    /** Keeps the file under a second name, with what is left of a write that was cut short. */
    private Path putAside() throws IOException {
        Path aside = Copy.fresh(file, "aside");
        copyOrLink(file, aside);
        Path journal = file.resolveSibling(file.getFileName() + "-journal");
        if (Files.exists(journal)) {
            // It belongs to the old file; beside the new one it would be taken for its own and destroy it.
            copyOrLink(journal, aside.resolveSibling(aside.getFileName() + "-journal"));
            Files.delete(journal);
        }
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

    /** A program that writes at this moment is told of; one that only has the file open sees the change itself. */
    private void refuseIfInUse() throws IOException, SQLException {
        if (!Files.exists(file) || FileHead.of(file) != FileHead.OURS) {
            return;
        }
        try (Connection connection = ReadOnly.of(file)) {
            Database.query(connection, "SELECT COUNT(*) FROM sqlite_schema", none -> {}, row -> row.getInt(1));
        } catch (SQLException e) {
            if (Failure.isInUse(e)) {
                throw e;
            }
            // A file too damaged to be read is what restoring is for.
        }
    }

    private StoreException failed(Path backup, String reason, Exception cause) {
        return new StoreException(
                "could not restore " + Failure.shown(backup) + " to " + Failure.shown(file) + ": " + reason, cause);
    }
}
