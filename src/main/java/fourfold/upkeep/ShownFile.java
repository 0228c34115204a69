// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Connections;
import fourfold.store.Database;
import fourfold.store.DatabaseCopy;
import fourfold.store.Failure;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;

/** An invented family's file: made once, the same bytes each time, and moved to the present when a copy of it is shown. */
public final class ShownFile {
    private static final long DAY = 86_400_000L;

    private ShownFile() {}

    /**
     * Writes what a store holds to one file without a log, and without what would differ between two makings: when its
     * tables were made, by whom, and how long that took. Its answers have no checksums, as their times are going to change.
     *
     * @param made an empty file
     * @throws RecordsFailure if either file can't be written
     */
    public static void write(Store store, Path made) throws IOException {
        store.database().write(Task.KEEP_ANSWERS, c -> {
            Database.run(
                    c,
                    "UPDATE flyway_schema_history SET installed_on = '2026-01-01 00:00:00', installed_by = '',"
                            + " execution_time = 0",
                    none -> {});
            Database.run(c, "UPDATE answer SET checksum = NULL", none -> {});
            return true;
        });
        try (Connection connection = Connections.reading(store.file().orElseThrow())) {
            DatabaseCopy.fill(made, connection);
        } catch (SQLException e) {
            throw new RecordsFailure(Task.SET_UP_DEMO, Failure.shown(made), Failure.problem(e), e);
        }
    }

    /**
     * Moves all drills and answers by whole days, so that the last answer was given on the day before, and has the children
     * added now.
     *
     * @throws RecordsFailure if the file can't be written
     */
    public static void moveTo(Store store, Instant now) {
        store.database().write(Task.KEEP_ANSWERS, c -> {
            long last = Database.query(
                            c,
                            "SELECT MAX(asked_at + zone_offset_min * 60000) / 86400000 FROM answer",
                            none -> {},
                            row -> row.getLong(1))
                    .get(0);
            long further = (now.toEpochMilli() / DAY - 1 - last) * DAY;
            change(c, "UPDATE answer SET asked_at = asked_at + ?", further);
            change(c, "UPDATE drill SET started_at = started_at + ?", further);
            change(c, "UPDATE child SET created_at = ?", now.toEpochMilli());
            return true;
        });
    }

    private static void change(Connection connection, String sql, long value) throws SQLException {
        Database.run(connection, sql, values -> values.setLong(1, value));
    }
}
