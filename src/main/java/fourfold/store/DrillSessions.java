// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.DrillSession;
import fourfold.log.Reason;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The drills. */
public final class DrillSessions {
    private static final String SELECT = """
            SELECT d.id, c.id, d.started_at, d.zone_offset_min, d.planned_s, d.seed, d.nr
            FROM drill d JOIN child c ON c.nr = d.child_nr
            """;

    /** A drill with the number of its row. */
    record Numbered(int number, DrillSession session) {}

    private DrillSessions() {}

    /** The child's drills, oldest first. */
    public static List<DrillSession> of(Connection connection, UUID child) throws SQLException {
        return since(connection, child, Instant.EPOCH);
    }

    /** Those of the child's drills that began at an instant or later, oldest first. */
    static List<DrillSession> since(Connection connection, UUID child, Instant from) throws SQLException {
        SameChildren same = SameChildren.in(connection);
        List<UUID> rows = same.rows(child);
        return List.copyOf(Database.query(
                connection,
                SELECT + "WHERE c.id" + SameChildren.oneOf(rows) + " AND d.started_at >= ? ORDER BY d.started_at, d.id",
                values -> {
                    SameChildren.filling(rows).into(values);
                    values.setLong(rows.size() + 1, from.toEpochMilli());
                },
                row -> read(row, same).session()));
    }

    static Optional<Numbered> find(Connection connection, UUID drill) throws SQLException {
        SameChildren same = SameChildren.in(connection);
        return Database.query(
                        connection,
                        SELECT + "WHERE d.id = ?",
                        values -> values.setString(1, drill.toString()),
                        row -> read(row, same))
                .stream()
                .findFirst();
    }

    static void begin(Connection connection, DrillSession session) throws SQLException {
        int child = Children.numberOf(connection, session.child());
        Optional<Numbered> before = find(connection, session.id());
        if (before.map(Numbered::session).filter(asKept(session)::equals).isPresent()) {
            return;
        }
        if (before.isPresent()) {
            throw new Refusal(Reason.DRILL_DIFFERS, session.id());
        }
        Database.run(
                connection,
                "INSERT INTO drill (id, child_nr, started_at, zone_offset_min, planned_s, seed)"
                        + " VALUES (?, ?, ?, ?, ?, ?)",
                values -> {
                    values.setString(1, session.id().toString());
                    values.setInt(2, child);
                    values.setLong(3, session.startedAt().toEpochMilli());
                    values.setInt(4, session.zoneOffsetMinutes());
                    values.setLong(5, session.planned().toSeconds());
                    values.setLong(6, session.seed());
                });
    }

    private static DrillSession asKept(DrillSession session) {
        return new DrillSession(
                session.id(),
                session.child(),
                session.startedAt().truncatedTo(ChronoUnit.MILLIS),
                session.zoneOffsetMinutes(),
                Duration.ofSeconds(session.planned().toSeconds()),
                session.seed());
    }

    private static Numbered read(ResultSet row, SameChildren same) throws SQLException {
        UUID id = Codes.id(row, 1);
        try {
            return new Numbered(
                    row.getInt(7),
                    new DrillSession(
                            id,
                            same.known(Codes.id(row, 2)),
                            Instant.ofEpochMilli(row.getLong(3)),
                            row.getInt(4),
                            Duration.ofSeconds(row.getInt(5)),
                            row.getLong(6)));
        } catch (IllegalArgumentException e) {
            throw new Refusal(Reason.DRILL_UNREADABLE, id, Failure.value(e));
        }
    }
}
