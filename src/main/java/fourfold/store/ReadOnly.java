package fourfold.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteOpenMode;

/** Connections that can't change the file they read. */
final class ReadOnly {
    private ReadOnly() {}

    /** A connection that only reads; it waits for another program's write as long as a write would. */
    static Connection of(Path file) throws SQLException {
        NativeLibrary.prepareUsual();
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout((int) StoreFile.PATIENCE.toMillis());
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source.getConnection();
    }

    /**
     * A connection for a check of the file. SQLite's own checks pass over the rules of the tables (CHECK) when a file is
     * opened to be read only, so it is opened as usual and each write is refused. Not for a file with an unfinished
     * write, which opening would complete.
     */
    static Connection checking(Path file) throws SQLException {
        NativeLibrary.prepareUsual();
        SQLiteConfig config = new SQLiteConfig();
        config.resetOpenMode(SQLiteOpenMode.CREATE);
        config.setBusyTimeout((int) StoreFile.PATIENCE.toMillis());
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        Connection connection = source.getConnection();
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA query_only = 1");
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }
}
