// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;

/**
 * The grown-ups' gate as the file keeps it.
 *
 * @param hash how the PIN was hashed, with salt and hash, as text of at most 400 characters
 * @param setAt when it was set
 * @param wrongTries wrong tries since the last right one
 * @param wrongAt when the last wrong one was
 */
public record GateRow(String hash, Instant setAt, int wrongTries, Optional<Instant> wrongAt) {
    static Optional<GateRow> in(Connection connection) throws SQLException {
        return Database.query(
                        connection,
                        "SELECT hash, set_at, wrong_tries, COALESCE(wrong_at, -1) FROM gate",
                        none -> {},
                        row -> new GateRow(
                                row.getString(1),
                                Instant.ofEpochMilli(row.getLong(2)),
                                row.getInt(3),
                                row.getLong(4) < 0
                                        ? Optional.empty()
                                        : Optional.of(Instant.ofEpochMilli(row.getLong(4)))))
                .stream()
                .findFirst();
    }

    /** Puts it in place of the one that was there. */
    void keep(Connection connection) throws SQLException {
        remove(connection);
        String sql = "INSERT INTO gate (nr, hash, set_at, wrong_tries, wrong_at) VALUES (1, ?, ?, ?, "
                + (wrongAt.isPresent() ? "?)" : "NULL)");
        Database.run(connection, sql, values -> {
            values.setString(1, hash);
            values.setLong(2, setAt.toEpochMilli());
            values.setInt(3, wrongTries);
            if (wrongAt.isPresent()) {
                values.setLong(4, wrongAt.get().toEpochMilli());
            }
        });
    }

    static void remove(Connection connection) throws SQLException {
        Database.run(connection, "DELETE FROM gate", none -> {});
    }
}
