// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Problem;
import fourfold.log.Reason;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.function.IntConsumer;

/** A whole copy of an open store, made beside it and checked. */
public final class DatabaseCopy {
    private DatabaseCopy() {}

    /**
     * Copies the store to a new file beside it, say {@code fourfold-before-2.db}, for its owner alone.
     *
     * @param why what the copy's name says about it
     * @return the copy
     * @throws SQLException if it can't be made, or is not whole
     */
    static Path make(Connection connection, Path file, String why) throws SQLException, IOException {
        Path copy = fresh(file, why);
        try {
            fill(copy, connection);
            return copy;
        } catch (SQLException | IOException e) {
            Files.deleteIfExists(copy);
            throw e;
        }
    }

    /** Fills an empty file with a whole copy, checked, that needs no log beside it: a copy of it is whole too. */
    public static void fill(Path copy, Connection connection) throws SQLException, IOException {
        fill(copy, connection, 0, percent -> {});
    }

    /**
     * The same, and tells how far it has come.
     *
     * @param bytes how large the copy will be, about
     * @param percent is told 0 to 100
     */
    public static void fill(Path copy, Connection connection, long bytes, IntConsumer percent)
            throws SQLException, IOException {
        Ticks.watch(connection, ticks -> {
            percent.accept(Ticks.share(copy.toFile().length(), bytes) / 2);
            return true;
        });
        // The library takes an empty file over and leaves its rights as they are.
        Database.run(connection, "VACUUM INTO ?", values -> values.setString(1, copy.toString()));
        force(copy);
        check(copy, half -> percent.accept(50 + half / 2));
    }

    /** Reads every page of the copy, without changing it. */
    public static void check(Path copy) throws SQLException {
        check(copy, percent -> {});
    }

    private static void check(Path copy, IntConsumer percent) throws SQLException {
        try (Connection connection = Connections.checking(copy)) {
            long expected = Ticks.ofCheck(copy.toFile().length());
            Ticks.watch(connection, ticks -> {
                percent.accept(Ticks.share(ticks, expected));
                return true;
            });
            List<String> found =
                    Database.query(connection, "PRAGMA integrity_check", none -> {}, row -> row.getString(1));
            if (!found.equals(List.of("ok"))) {
                throw new Failure.Known(
                        Failure.unread(found).orElseGet(() -> Problem.of(Reason.COPY_NOT_WHOLE, Failure.shown(copy))));
            }
        }
    }

    /** Returns when the file's bytes are on the disk. */
    public static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Gives a finished file its name in one step, replacing what had that name. */
    public static void name(Path finished, Path name) throws IOException {
        Files.move(finished, name, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceFolder(name);
    }

    /** Returns when a new file's name is on the disk too; a system that can't open folders can't be asked. */
    static void forceFolder(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            force(channel, folder);
        } catch (AccessDeniedException e) {
            // Windows opens no folder, and keeps names by itself.
            if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
                throw e;
            }
        }
    }

    /** On another computer's disk the names of a folder are that computer's business. */
    private static void force(FileChannel channel, Path folder) throws IOException {
        try {
            channel.force(true);
        } catch (IOException e) {
            if (!Journal.isRemote(folder)) {
                throw e;
            }
        }
    }

    /** A new empty file beside this one, for its owner alone, say {@code fourfold-before-2.db}. */
    public static Path fresh(Path file, String why) throws IOException {
        String stem = BackupFiles.stem(file);
        String ending = String.valueOf(file.getFileName()).substring(stem.length());
        for (int attempt = 1; ; attempt++) {
            String number = attempt == 1 ? "" : "-" + attempt;
            Path copy = file.resolveSibling(stem + "-" + why + number + ending);
            if (Rights.makeFile(copy)) {
                return copy;
            }
        }
    }
}
