// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Looks into the file as any other program could: by plain SQL over a connection of its own. */
public final class Rows {
    private Rows() {}

    /** The columns of all rows as text; nothing is an empty text. */
    public static List<List<String>> of(Path file, String sql) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            List<List<String>> all = new ArrayList<>();
            while (rows.next()) {
                List<String> row = new ArrayList<>();
                for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                    String text = rows.getString(i);
                    row.add(rows.wasNull() ? "" : text);
                }
                all.add(row);
            }
            return all;
        } catch (SQLException e) {
            throw new AssertionError(sql, e);
        }
    }

    /** The first column of all rows. */
    public static List<String> column(Path file, String sql) {
        return of(file, sql).stream().map(row -> row.get(0)).toList();
    }

    /** Changes the file. */
    static void change(Path file, String sql) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new AssertionError(sql, e);
        }
    }
}
