// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteOpenMode;

/** Every connection to a file, with its settings. */
public final class Connections {
    private Connections() {}

    /**
     * Connections that write, and make the file if there is none. Each write is forced to the disk before it counts
     * (synchronous FULL), and takes the write lock before it reads.
     *
     * @param patience how long to wait for another program's write
     * @param references whether references between tables are checked
     */
    static SQLiteDataSource writing(Path file, Duration patience, boolean references) {
        SQLiteConfig config = config(patience);
        config.enforceForeignKeys(references);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        return source(config, file);
    }

    /**
     * A connection to read a file with all that its log holds; it waits for another program's write as long as a write
     * would. A log that is there is left as it is, so that the file is not changed.
     */
    public static Connection reading(Path file) throws SQLException {
        NativeLibrary.prepareUsual();
        SQLiteConfig config = config(StoreFile.PATIENCE);
        if (Journal.isHot(Journal.log(file))) {
            config.setReadOnly(true);
        } else {
            // A reader that may write takes the empty log away again that it makes; one that may not leaves it there.
            config.resetOpenMode(SQLiteOpenMode.CREATE);
        }
        return source(config, file).getConnection();
    }

    /**
     * A connection for a check of a file. SQLite's own checks pass over the rules of the tables (CHECK) when a file is
     * opened to be read only, so it is opened as usual and each write is refused. Not for a file with an unfinished
     * write, which opening would complete.
     */
    public static Connection checking(Path file) throws SQLException {
        Connection connection = reading(file);
        try {
            trustNothing(connection);
            run(connection, "PRAGMA query_only = 1");
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** A connection with no settings but patience: the library has not looked at the file yet. */
    static Connection plain(Path file) throws SQLException {
        return source(config(StoreFile.PATIENCE), file).getConnection();
    }

    /** A connection to no file at all, made as those that write are. */
    static Connection inMemory() throws SQLException {
        SQLiteConfig config = config(StoreFile.PATIENCE);
        config.enforceForeignKeys(true);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite::memory:");
        return source.getConnection();
    }

    private static SQLiteConfig config(Duration patience) {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout((int) patience.toMillis());
        // Or the driver asks after every row that is added which number it has got.
        config.setGetGeneratedKeys(false);
        return config;
    }

    private static SQLiteDataSource source(SQLiteConfig config, Path file) {
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source;
    }

    /**
     * A connection to read a copy of a file from elsewhere: nothing in its schema is trusted, nothing is written, nothing
     * is attached or loaded, every cell of a page is checked, and no value is longer than ours can be.
     */
    public static Connection foreign(Path copy) throws SQLException {
        SQLiteConfig config = config(StoreFile.PATIENCE);
        config.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, "100000");
        config.setPragma(SQLiteConfig.Pragma.LIMIT_SQL_LENGTH, "50000");
        config.setPragma(SQLiteConfig.Pragma.LIMIT_ATTACHED, "0");
        config.setPragma(SQLiteConfig.Pragma.LIMIT_TRIGGER_DEPTH, "1");
        config.setPragma(SQLiteConfig.Pragma.LIMIT_WORKER_THREADS, "0");
        Connection connection = source(config, copy).getConnection();
        try {
            trustNothing(connection);
            run(connection, "PRAGMA cell_size_check = ON");
            run(connection, "PRAGMA query_only = ON");
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** A connection to fill a file that only this program knows yet: nothing of it has to be on the disk before all is. */
    public static Connection fresh(Path file) throws SQLException {
        SQLiteConfig config = config(StoreFile.PATIENCE);
        config.enforceForeignKeys(false);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        return source(config, file).getConnection();
    }

    /** Connections that fill a new file which nobody else knows, with no journal beside it: forced is it as a whole. */
    static SQLiteDataSource making(Path file) {
        SQLiteConfig config = config(StoreFile.PATIENCE);
        config.setJournalMode(SQLiteConfig.JournalMode.MEMORY);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        return source(config, file);
    }

    /**
     * What is written in a file's own schema may from now on call nothing that could do harm (SQLite's page on defence
     * against dark arts).
     */
    static void trustNothing(Connection connection) throws SQLException {
        run(connection, "PRAGMA trusted_schema = OFF");
    }

    /** Marks the file as ours, also one that was marked until the first write ever, cut short, was undone just now. */
    static void mark(Connection connection) throws SQLException {
        int now = Database.query(connection, "PRAGMA application_id", none -> {}, row -> row.getInt(1))
                .get(0);
        if (now != FileHead.APPLICATION) {
            Connections.run(connection, "PRAGMA application_id = " + FileHead.APPLICATION);
        }
    }

    /** Runs one statement without values. */
    public static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
