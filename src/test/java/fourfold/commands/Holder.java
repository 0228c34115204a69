// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

/** Another program that has the file open, over a connection of its own, and is in the middle of something. */
final class Holder implements AutoCloseable {
    private final Connection connection;

    private Holder(Path file, String... statements) {
        try {
            connection = DriverManager.getConnection("jdbc:sqlite:" + file);
            for (String sql : statements) {
                run(sql);
            }
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    /** It writes: no one else can, until it lets go. */
    static Holder writing(Path file) {
        return new Holder(file, "BEGIN IMMEDIATE");
    }

    /** It has read something and goes on reading. */
    static Holder reading(Path file) {
        return new Holder(file, "BEGIN", "SELECT count(*) FROM answer");
    }

    private void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Lets go, with nothing changed. */
    void letGo() {
        close();
    }

    @Override
    public void close() {
        try {
            if (!connection.isClosed()) {
                run("ROLLBACK");
                connection.close();
            }
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }
}
