// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.EarlierSlips;
import fourfold.store.Failure;
import fourfold.store.FileHead;
import fourfold.store.Journal;
import fourfold.store.Refusal;
import fourfold.store.Rights;
import fourfold.store.Schema;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * The one door by which a file comes in that this program did not write on this computer: a backup, another computer's
 * file. It is copied with the log beside it into a {@link PrivateFolder} and opened only there, with nothing of its own
 * schema trusted, within limits of size, rows and time. Its tables are compared one by one with those of a file of ours
 * before anything of it is run. Then each value is checked and written, row by row, into a fresh file that this program
 * makes; only that file is used further. What does not pass leaves everything as it was.
 */
public final class ForeignFile implements AutoCloseable {
    /** Five million answers, some eighty years of ten children, take less than this. */
    private static final long LARGEST_MB = 512;

    private static final int TRIES = 5;

    private static volatile byte[] emptyFile = {};

    private final PrivateFolder folder;
    private boolean older;

    private ForeignFile(PrivateFolder folder) {
        this.folder = folder;
    }

    /**
     * Takes a file through the door.
     *
     * @param task what it is wanted for, which a failure names
     * @param notOurs what is said of a file that is no Fourfold file at all
     * @throws RecordsFailure if it is not whole and ours
     */
    static ForeignFile of(Path file, Task task, Reason notOurs) {
        return of(file, task, notOurs, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    static ForeignFile of(Path file, Task task, Reason notOurs, Advance advance) {
        try {
            if (!Files.exists(file)) {
                throw new RecordsFailure(task, Failure.shown(file), Problem.of(Reason.NO_FILE));
            }
            if (!Files.isRegularFile(file) || FileHead.of(file) != FileHead.OURS) {
                throw new RecordsFailure(task, Failure.shown(file), Problem.of(notOurs));
            }
            ForeignFile foreign = new ForeignFile(PrivateFolder.make());
            try {
                foreign.take(file, advance);
                return foreign;
            } catch (IOException | SQLException | RuntimeException e) {
                foreign.close();
                throw e;
            }
        } catch (IOException e) {
            throw new RecordsFailure(task, Failure.shown(file), Failure.problem(e), e);
        } catch (SQLException e) {
            throw new RecordsFailure(task, Failure.shown(file), Failure.ofForeign(e), e);
        } catch (Refusal e) {
            throw new RecordsFailure(task, Failure.shown(file), e.problem(), e);
        } catch (RecordsFailure e) {
            // What failed on the way in the private copy is said of the file that it is a copy of.
            throw new RecordsFailure(task, Failure.shown(file), e.problem(), e);
        }
    }

    /**
     * Brings in a file that can't be opened as a database, because it is damaged: only its bytes, to be read by no library.
     *
     * @throws IOException if there is no such ordinary file, or it can't be read
     */
    static ForeignFile bytes(Path file) throws IOException {
        if (!Files.exists(file)) {
            throw new NoSuchFileException(file.toString());
        }
        if (!Files.isRegularFile(file)) {
            throw new AccessDeniedException(file.toString());
        }
        ForeignFile foreign = new ForeignFile(PrivateFolder.make());
        try {
            copyBytes(file, foreign.copy());
            EarlierSlips.copy(file, foreign.copy());
            return foreign;
        } catch (IOException | RuntimeException e) {
            foreign.close();
            throw e;
        }
    }

    /**
     * Brings in a text from elsewhere: an ordinary file of UTF-8 that does not change meanwhile. The mark that some
     * spreadsheets put before it is passed over. What stands in it is for its reader to judge.
     *
     * @return empty if it is larger than any text of ours
     * @throws java.nio.charset.CharacterCodingException if it is no UTF-8
     * @throws IOException if there is no such ordinary file, or it can't be read
     */
    public static Optional<String> text(Path file) throws IOException {
        if (Files.isRegularFile(file) && Files.size(file) > LARGEST_MB << 20) {
            return Optional.empty();
        }
        try (ForeignFile taken = bytes(file)) {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(taken.copy())))
                    .toString();
            return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (Refusal e) {
            throw new IOException(e);
        }
    }

    /** The copy, byte by byte as the file was, with what stood beside it. */
    Path copy() {
        return folder.file("copy.db");
    }

    /** The fresh file of ours, one file that is whole by itself. */
    Path file() {
        return folder.file("fresh.db");
    }

    /** Whether an older program wrote it. */
    boolean isOlder() {
        return older;
    }

    /** Makes its tables known to a connection under the name {@code other}. */
    void attachTo(Connection connection) throws SQLException {
        String quoted = file().toString().replace("'", "''");
        Connections.run(connection, "ATTACH DATABASE '" + quoted + "' AS other");
    }

    private void take(Path file, Advance advance) throws IOException, SQLException {
        Path copy = copy();
        copyBytes(file, copy);
        EarlierSlips.copy(file, copy);
        Journal.intoOneFile(copy);
        TimeLimit limit = new TimeLimit(Files.size(copy));
        Schema.State state;
        try (Connection connection = open(copy, limit)) {
            state = checkTables(connection);
        }
        older = state == Schema.State.OLDER;
        if (older || !EarlierSlips.beside(copy).isEmpty()) {
            Store.open(copy).close();
            Journal.intoOneFile(copy);
        }
        Files.write(file(), empty());
        try (Connection from = open(copy, limit);
                Connection to = Connections.fresh(file())) {
            checkTables(from);
            new ForeignRows(from, to).copy(advance);
            // Where it meets other computers holds for the computer it comes from.
            Connections.run(to, "DELETE FROM home_setting WHERE name LIKE 'together.%'");
            checkReferences(to);
        }
    }

    /** A file of ours with nothing in it; made once, as it takes longer than to write it. */
    private byte[] empty() throws IOException, SQLException {
        if (emptyFile.length == 0) {
            Path made = folder.file("empty.db");
            Store.open(made).close();
            Journal.intoOneFile(made);
            emptyFile = Files.readAllBytes(made);
        }
        return emptyFile.clone();
    }

    private static Connection open(Path copy, TimeLimit limit) throws SQLException {
        Connection connection = Connections.foreign(copy);
        try {
            limit.watch(connection);
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    private static Schema.State checkTables(Connection connection) throws SQLException {
        Schema.State state = Schema.TODAY.stateOf(connection);
        switch (state) {
            case NEWER -> throw new Refusal(Reason.NEWER_PROGRAM);
            case EMPTY, FOREIGN -> throw new Refusal(Reason.OTHER_TABLES);
            default -> {
                Schema.TODAY.changed(connection, true).ifPresent(name -> {
                    throw new Refusal(Reason.STRANGE_OBJECT, name);
                });
                ForeignRows.checkCounts(connection);
                checkPages(connection);
                return state;
            }
        }
    }

    private static void checkPages(Connection connection) throws SQLException {
        List<String> found = Database.query(
                connection, "PRAGMA integrity_check(1)", none -> {}, row -> String.valueOf(row.getString(1)));
        if (!found.equals(List.of("ok"))) {
            throw new Refusal(Failure.unread(found).orElseGet(() -> Problem.of(Reason.FOREIGN_DAMAGED)));
        }
    }

    private static void checkReferences(Connection connection) throws SQLException {
        if (!Database.query(connection, "PRAGMA foreign_key_check", none -> {}, row -> 1)
                .isEmpty()) {
            throw new Refusal(Reason.FOREIGN_DAMAGED);
        }
    }

    /**
     * Copies a file and what stands beside it, without opening it: a log or a journal is used up only beside the copy. If
     * it is written to meanwhile it is copied again.
     */
    static void copyBytes(Path file, Path copy) throws IOException {
        for (int attempt = 1; attempt <= TRIES; attempt++) {
            List<Object> before = state(file);
            try {
                copyOne(file, copy);
                copyOne(Journal.log(file), Journal.log(copy));
                copyOne(Journal.rollback(file), Journal.rollback(copy));
            } catch (NoSuchFileException e) {
                if (!Files.exists(file)) {
                    throw e;
                }
                // Another program closed the file meanwhile, and its log went.
                continue;
            }
            if (before.equals(state(file))) {
                return;
            }
        }
        throw new Refusal(Reason.ANOTHER_PROGRAM);
    }

    private static void copyOne(Path from, Path to) throws IOException {
        Files.deleteIfExists(to);
        if (Files.exists(from)) {
            if (Files.size(from) > LARGEST_MB << 20) {
                throw new Refusal(Reason.TOO_LARGE, LARGEST_MB);
            }
            Rights.makeFile(to);
            try (var in = Files.newInputStream(from);
                    var out = Files.newOutputStream(to)) {
                in.transferTo(out);
            }
        }
    }

    private static List<Object> state(Path file) throws IOException {
        return List.of(one(file), one(Journal.log(file)), one(Journal.rollback(file)));
    }

    private static Object one(Path file) throws IOException {
        try {
            BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
            return List.of(now.size(), now.lastModifiedTime());
        } catch (NoSuchFileException e) {
            return "none";
        }
    }

    @Override
    public void close() {
        folder.close();
    }
}
