// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One open connection, with transactions, and with errors that say what was tried in which file.
 *
 * <p>Transactions are begun and ended by plain statements: the driver's own calls begin the next transaction as soon as
 * one is committed, so a commit that worked could be reported as failed.
 */
public final class Database implements AutoCloseable {
    /** How many writes the log may hold before a checkpoint: several drills of the longest kind. */
    private static final int MOST_IN_LOG = 2_000;

    private final Connection connection;
    private final String begin;
    private final String where;
    private final Supplier<Optional<Object>> identity;
    private final Optional<Object> opened;
    private final boolean onDisk;
    private int inLog;

    /**
     * Takes over a connection that is in autocommit mode.
     *
     * @param begin the statement that begins a transaction and takes the write lock
     * @param where the file, as messages name it
     */
    Database(Connection connection, String begin, String where) {
        this(connection, begin, where, Optional::empty, false);
    }

    /**
     * The same for a file that may be moved or replaced meanwhile.
     *
     * @param identity identifies the file that has the name now; every write makes sure that it is still the one that was opened
     */
    Database(Connection connection, String begin, String where, Supplier<Optional<Object>> identity) {
        this(connection, begin, where, identity, true);
    }

    private Database(
            Connection connection, String begin, String where, Supplier<Optional<Object>> identity, boolean onDisk) {
        this.onDisk = onDisk;
        this.connection = connection;
        this.begin = begin;
        this.where = where;
        this.identity = identity;
        this.opened = identity.get();
    }

    /** The file, as messages name it. */
    String where() {
        return where;
    }

    /** Something done with the connection. */
    public interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    /** Fills the question marks of a statement. */
    public interface Values {
        void into(PreparedStatement statement) throws SQLException;
    }

    /** Makes something of the current row. */
    public interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    /** The rows of a query, each made into something. */
    public static <T> List<T> query(Connection connection, String sql, Values values, Row<T> row) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            values.into(statement);
            try (ResultSet rows = statement.executeQuery()) {
                List<T> all = new ArrayList<>();
                while (rows.next()) {
                    all.add(row.of(rows));
                }
                return all;
            }
        }
    }

    /** Runs one statement that changes something. */
    public static void run(Connection connection, String sql, Values values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            values.into(statement);
            statement.executeUpdate();
        }
    }

    /**
     * Reads outside a transaction.
     *
     * @throws RecordsFailure to do this task
     */
    public synchronized <T> T read(Task task, Work<T> work) {
        try {
            return work.on(connection);
        } catch (SQLException e) {
            throw new RecordsFailure(task, where, Failure.problem(e), e);
        } catch (Refusal e) {
            throw new RecordsFailure(task, where, e.problem(), e);
        }
    }

    /** Brings what stands in a file's log into the file, without waiting for readers. */
    synchronized void checkpoint() {
        if (onDisk) {
            inLog = 0;
            read(Task.BRING_LOG_IN, c -> query(c, "PRAGMA wal_checkpoint(PASSIVE)", none -> {}, row -> 1));
        }
    }

    /** The same where it may fail: what is in the log is kept. */
    synchronized void checkpointIfPossible() {
        try {
            checkpoint();
        } catch (RecordsFailure e) {
            inLog = 0;
        }
    }

    /**
     * Does everything in one transaction or nothing of it; when this returns, it is on the disk.
     *
     * @throws RecordsFailure to do this task
     */
    public synchronized void write(Task task, Work<?> work) {
        try {
            // The system would go on writing to a file that was removed, and nobody would find it again.
            checkIdentity();
            execute(begin);
            try {
                work.on(connection);
                execute("COMMIT");
                checkIdentity();
            } catch (SQLException | RuntimeException e) {
                rollBack(e);
                throw e;
            }
        } catch (SQLException e) {
            throw new RecordsFailure(task, where, Failure.problem(e), e);
        } catch (Refusal e) {
            throw new RecordsFailure(task, where, e.problem(), e);
        }
        inLog++;
        if (inLog >= MOST_IN_LOG) {
            checkpointIfPossible();
        }
    }

    @Override
    public synchronized void close() {
        // The library does this by itself, but not for a file that was moved meanwhile.
        checkpointIfPossible();
        try {
            connection.close();
        } catch (SQLException e) {
            throw new RecordsFailure(Task.CLOSE, where, Failure.problem(e), e);
        }
    }

    private void checkIdentity() {
        if (!identity.get().equals(opened)) {
            // The library still has hold of the old file: what was kept comes into it, wherever it is now.
            checkpointIfPossible();
            throw new Refusal(Reason.REPLACED);
        }
    }

    private void rollBack(Exception reason) {
        try {
            execute("ROLLBACK");
        } catch (SQLException e) {
            // A full disk has already rolled back by itself; the first failure is the one worth telling.
            reason.addSuppressed(e);
        }
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
