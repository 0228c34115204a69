// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What is remembered for the whole home and not for one child. */
final class HomeSettings {
    private HomeSettings() {}

    static Optional<String> of(Connection connection, String name) throws SQLException {
        List<String> found = Database.query(
                connection,
                "SELECT text FROM home_setting WHERE name = ?",
                statement -> statement.setString(1, name),
                row -> row.getString(1));
        return found.stream().findFirst();
    }

    /** All whose names begin so, by name. */
    static Map<String, String> beginning(Connection connection, String beginning) throws SQLException {
        Map<String, String> found = new TreeMap<>();
        Database.query(
                connection,
                "SELECT name, text FROM home_setting WHERE SUBSTR(name, 1, ?) = ?",
                statement -> {
                    statement.setInt(1, beginning.length());
                    statement.setString(2, beginning);
                },
                row -> found.put(row.getString(1), row.getString(2)));
        return found;
    }

    static void keep(Connection connection, String name, String text) throws SQLException {
        Database.run(connection, "DELETE FROM home_setting WHERE name = ?", s -> s.setString(1, name));
        Database.run(connection, "INSERT INTO home_setting (name, text) VALUES (?, ?)", statement -> {
            statement.setString(1, name);
            statement.setString(2, text);
        });
    }
}
