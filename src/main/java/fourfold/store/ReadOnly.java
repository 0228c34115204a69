package fourfold.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

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
}
