// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Problem;
import fourfold.log.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Locale;
import java.util.Set;

/**
 * What stands beside a file so that no write is ever half done: SQLite's write-ahead log, or its rollback journal where a
 * log can't be had. In a log an answer takes one forced write, and no reader holds it up. A file with a log is whole only
 * together with it; the last program that closes the file brings all of it into the file and takes it away.
 */
public final class Journal {
    /** How long a start waits for other programs when it brings an older file to its log; the next start tries again. */
    private static final Duration SHORT = Duration.ofMillis(100);

    /** File systems of other computers, by the names Linux and macOS give them: their programs don't share memory. */
    private static final Set<String> REMOTE =
            Set.of("nfs", "nfs4", "cifs", "smb2", "smb3", "smbfs", "afpfs", "webdav", "9p", "afs", "fuse.sshfs");

    private Journal() {}

    /** The write-ahead log of a file, whether there is one or not. */
    public static Path log(Path file) {
        return beside(file, "-wal");
    }

    /** The rollback journal of a file, whether there is one or not. */
    public static Path rollback(Path file) {
        return beside(file, "-journal");
    }

    /** SQLite follows links, and puts its files beside the one that is meant. */
    public static Path beside(Path file, String ending) {
        Path real = real(file);
        return real.resolveSibling(real.getFileName() + ending);
    }

    /** The file that is meant where its name is a link, whether it is there or not. */
    public static Path real(Path file) {
        Path whole = file.toAbsolutePath().normalize();
        try {
            return whole.toRealPath();
        } catch (IOException e) {
            return meant(whole);
        }
    }

    /** There is no such file: then where its link leads, or else its name is all there is. */
    private static Path meant(Path whole) {
        try {
            return whole.resolveSibling(Files.readSymbolicLink(whole)).normalize();
        } catch (IOException | UnsupportedOperationException e) {
            return whole;
        }
    }

    /** Whether there is a log, and something in it. */
    public static boolean isHot(Path log) {
        try {
            return Files.size(log) > 0;
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Whether a program was killed in the middle of a write without a log; only a program that may write can tidy up. A
     * journal whose first byte is zero was never made valid, as nothing had reached the file yet (SQLite's file
     * format, section 3, and its pages on locking, "hot journals").
     */
    public static boolean unfinishedWrite(Path file) throws IOException {
        Path journal = rollback(file);
        if (!Files.exists(journal)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(journal)) {
            return in.read() > 0;
        }
    }

    /**
     * What a file is by its head; a first page that was only half written when the power went is known again once the write is
     * undone.
     */
    static FileHead headOf(Path file) throws IOException {
        FileHead head = FileHead.of(file);
        if (head != FileHead.NO_DATABASE || !unfinishedWrite(file)) {
            return head;
        }
        NativeLibrary.prepareUsual();
        try (Connection connection = Connections.plain(file)) {
            Database.query(connection, "PRAGMA schema_version", none -> {}, row -> row.getInt(1));
        } catch (SQLException e) {
            return head;
        }
        return FileHead.of(file);
    }

    /**
     * Keeps the file with a log from now on, or with a rollback journal if other programs hold it just now or it is on
     * another computer's disk. What is in the log comes into the file when {@link Database#checkpoint} says so.
     *
     * @param patience what the connection waits otherwise
     * @throws SQLException if the disk can't do what a log needs; the file is to be taken {@link #backFromLog} then
     */
    static void choose(Connection connection, Path file, Duration patience) throws SQLException {
        Connections.run(connection, "PRAGMA wal_autocheckpoint = 0");
        if (!isRemote(file) && isLogged(connection, patience)) {
            // A disk without shared memory takes the log and then nothing more.
            Connections.run(connection, "BEGIN IMMEDIATE");
            Connections.run(connection, "ROLLBACK");
        } else {
            withoutLog(connection);
        }
    }

    private static boolean isLogged(Connection connection, Duration patience) throws SQLException {
        Connections.run(connection, "PRAGMA busy_timeout = " + Math.min(SHORT.toMillis(), patience.toMillis()));
        try {
            return become(connection, "WAL");
        } catch (SQLException e) {
            if (!Failure.isInUse(e)) {
                throw e;
            }
            return false;
        } finally {
            Connections.run(connection, "PRAGMA busy_timeout = " + patience.toMillis());
        }
    }

    /** The rollback journal, unless other programs hold the file in its log. */
    static void withoutLog(Connection connection) throws SQLException {
        try {
            become(connection, "TRUNCATE");
        } catch (SQLException e) {
            if (!Failure.isInUse(e)) {
                throw e;
            }
        }
    }

    /** Brings everything into the one file, which needs no log from now on; refused while another program has it open. */
    public static void intoOneFile(Connection connection) throws SQLException {
        if (!become(connection, "DELETE")) {
            throw new Failure.Known(Problem.of(Reason.NOT_ALONE));
        }
    }

    /** The same for a file that nobody has open. */
    public static void intoOneFile(Path file) throws SQLException {
        try (Connection connection = Connections.plain(file)) {
            intoOneFile(connection);
        }
    }

    /** Takes a file back from its log where the disk can't share memory: whoever has it all alone needs none. */
    static void backFromLog(Path file) throws SQLException {
        try (Connection connection = Connections.plain(file)) {
            Connections.run(connection, "PRAGMA locking_mode = EXCLUSIVE");
            intoOneFile(connection);
        }
    }

    private static boolean become(Connection connection, String mode) throws SQLException {
        return Database.query(connection, "PRAGMA journal_mode = " + mode, none -> {}, row -> row.getString(1))
                .get(0)
                .equalsIgnoreCase(mode);
    }

    /** Whether a file is on another computer's disk. */
    static boolean isRemote(Path file) {
        try {
            return REMOTE.contains(Files.getFileStore(file).type().toLowerCase(Locale.ROOT));
        } catch (IOException e) {
            return false;
        }
    }
}
