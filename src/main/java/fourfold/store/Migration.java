// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteDataSource;

/** Brings a file to the newest schema with Flyway. */
final class Migration {
    /** Held for good: a logger that nobody holds forgets that it was silenced. */
    private static final Logger FLYWAY = Logger.getLogger("org.flywaydb");

    static {
        FLYWAY.setLevel(Level.OFF);
    }

    private Migration() {}

    /**
     * Flyway for a database.
     *
     * @param identity what makes a column number its rows by itself: nothing on SQLite
     */
    static Flyway flyway(DataSource source, List<String> locations, String identity) {
        return Flyway.configure(Migration.class.getClassLoader())
                .dataSource(source)
                .locations(locations.toArray(String[]::new))
                .failOnMissingLocations(true)
                .validateMigrationNaming(true)
                .placeholders(Map.of("identity", identity))
                .load();
    }

    /** Makes all tables in an empty file, and marks it as ours. */
    static void fill(Path empty, Schema schema) throws SQLException, FlywayException {
        SQLiteDataSource source = Connections.making(empty);
        try (Connection connection = source.getConnection()) {
            Connections.mark(connection);
        }
        run(source, schema);
    }

    /** Migrates an SQLite file; the reason it could not, if so, is in the exception. */
    static void run(DataSource source, Schema schema) throws FlywayException {
        flyway(source, schema.locations(), "").migrate();
    }

    /** Migrates an SQLite file only as far as a version. */
    static void upTo(DataSource source, Schema schema, String version) throws FlywayException {
        Flyway whole = flyway(source, schema.locations(), "");
        Flyway.configure(Migration.class.getClassLoader())
                .configuration(whole.getConfiguration())
                .target(version)
                .load()
                .migrate();
    }
}
