package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.log.ParentAction;
import fourfold.log.Reason;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;

/** The parent's acts. */
public final class Actions {
    private static final String SELECT = """
            SELECT a.id, c.id, a.made_at, a.zone_offset_min, a.kind, a.detail
            FROM act a JOIN child c ON c.nr = a.child_nr
            """;

    private Actions() {}

    /** The child's acts, oldest first. */
    public static List<ActionRecord> of(Connection connection, UUID child) throws SQLException {
        List<UUID> rows = SameChildren.in(connection).rows(child);
        List<ActionRecord> acts = Database.query(
                connection,
                SELECT + "WHERE c.id" + SameChildren.oneOf(rows),
                SameChildren.filling(rows),
                Actions::read);
        return inOrder(acts.stream()
                .map(a -> new ActionRecord(a.id(), child, a.at(), a.zoneOffsetMinutes(), a.action()))
                .toList());
    }

    /** What names and puts away children: every choice and every undo, of all children. */
    static List<ActionRecord> choices(Connection connection) throws SQLException {
        return Database.query(connection, SELECT + "WHERE a.kind IN ('choose', 'undo')", none -> {}, Actions::read);
    }

    /** The same of an attached database called {@code other}. */
    static List<ActionRecord> choicesOfOther(Connection connection) throws SQLException {
        String select = SELECT.replace("FROM act a JOIN child c", "FROM other.act a JOIN other.child c");
        return Database.query(connection, select + "WHERE a.kind IN ('choose', 'undo')", none -> {}, Actions::read);
    }

    public static void keep(Connection connection, ActionRecord act) throws SQLException {
        checkChoice(act.action());
        ActionText text = ActionText.of(act.action());
        ActionRecord kept = new ActionRecord(
                act.id(), act.child(), act.at().truncatedTo(ChronoUnit.MILLIS), act.zoneOffsetMinutes(), act.action());
        int child = Children.numberOf(connection, act.child());
        List<ActionRecord> before = Database.query(
                connection,
                SELECT + "WHERE a.id = ?",
                values -> values.setString(1, act.id().toString()),
                Actions::read);
        if (before.contains(kept)) {
            return;
        }
        if (!before.isEmpty()) {
            throw new Refusal(Reason.ACTION_DIFFERS, act.id());
        }
        Database.run(
                connection,
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail) VALUES (?, ?, ?, ?, ?, ?)",
                values -> {
                    values.setString(1, act.id().toString());
                    values.setInt(2, child);
                    values.setLong(3, act.at().toEpochMilli());
                    values.setInt(4, act.zoneOffsetMinutes());
                    values.setString(5, text.kind());
                    values.setString(6, text.detail());
                });
        if (act.action() instanceof ParentAction.Choose || act.action() instanceof ParentAction.Undo) {
            Children.checkNameOf(connection, act.child());
        }
    }

    private static void checkChoice(ParentAction action) {
        if (action instanceof ParentAction.Choose choose && choose.setting().equals(Children.NAME)) {
            try {
                ChildName.chosen(choose.chosen());
            } catch (InvalidValue e) {
                throw new Refusal(e.problem());
            }
        }
    }

    private static List<ActionRecord> inOrder(List<ActionRecord> acts) {
        return acts.stream().sorted(ActionRecord.IN_ORDER).toList();
    }

    private static ActionRecord read(ResultSet row) throws SQLException {
        String id = row.getString(1);
        try {
            return new ActionRecord(
                    UUID.fromString(id),
                    UUID.fromString(row.getString(2)),
                    Instant.ofEpochMilli(row.getLong(3)),
                    row.getInt(4),
                    new ActionText(row.getString(5), row.getString(6)).action());
        } catch (IllegalArgumentException e) {
            throw new Refusal(Reason.ACTION_UNREADABLE, Failure.oneLine(id), Failure.value(e));
        }
    }
}
