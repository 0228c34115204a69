// SPDX-License-Identifier: Apache-2.0
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

/** The parent's actions. */
public final class Actions {
    private static final String SELECT = """
            SELECT a.id, c.id, a.made_at, a.zone_offset_min, a.kind, a.detail
            FROM act a JOIN child c ON c.nr = a.child_nr
            """;

    private Actions() {}

    /** The child's actions, oldest first. */
    public static List<ActionRecord> of(Connection connection, UUID child) throws SQLException {
        List<UUID> rows = SameChildren.in(connection).rows(child);
        List<ActionRecord> actions = Database.query(
                connection,
                SELECT + "WHERE c.id" + SameChildren.oneOf(rows),
                SameChildren.filling(rows),
                Actions::read);
        return inOrder(actions.stream()
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

    /**
     * Keeps an action; the same action kept twice changes nothing.
     *
     * @throws Refusal if another action has its id, or a name it chooses is unfit or taken
     */
    public static void keep(Connection connection, ActionRecord action) throws SQLException {
        checkChoice(action.action());
        ActionText text = ActionText.of(action.action());
        ActionRecord kept = new ActionRecord(
                action.id(),
                action.child(),
                action.at().truncatedTo(ChronoUnit.MILLIS),
                action.zoneOffsetMinutes(),
                action.action());
        int child = Children.numberOf(connection, action.child());
        List<ActionRecord> before = Database.query(
                connection,
                SELECT + "WHERE a.id = ?",
                values -> values.setString(1, action.id().toString()),
                Actions::read);
        if (before.contains(kept)) {
            return;
        }
        if (!before.isEmpty()) {
            throw new Refusal(Reason.ACTION_DIFFERS, action.id());
        }
        Database.run(
                connection,
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail) VALUES (?, ?, ?, ?, ?, ?)",
                values -> {
                    values.setString(1, action.id().toString());
                    values.setInt(2, child);
                    values.setLong(3, action.at().toEpochMilli());
                    values.setInt(4, action.zoneOffsetMinutes());
                    values.setString(5, text.kind());
                    values.setString(6, text.detail());
                });
        if (action.action() instanceof ParentAction.Choose || action.action() instanceof ParentAction.Undo) {
            Children.checkNameOf(connection, action.child());
        }
    }

    static void checkChoice(ParentAction action) {
        if (action instanceof ParentAction.Choose choose && choose.setting().equals(Children.NAME)) {
            try {
                ChildName.chosen(choose.chosen());
            } catch (InvalidValue e) {
                throw new Refusal(e.problem());
            }
        }
    }

    private static List<ActionRecord> inOrder(List<ActionRecord> actions) {
        return actions.stream().sorted(ActionRecord.IN_ORDER).toList();
    }

    private static ActionRecord read(ResultSet row) throws SQLException {
        UUID id = Codes.id(row, 1);
        try {
            return new ActionRecord(
                    id,
                    Codes.id(row, 2),
                    Instant.ofEpochMilli(row.getLong(3)),
                    row.getInt(4),
                    new ActionText(row.getString(5), row.getString(6)).action());
        } catch (IllegalArgumentException e) {
            throw new Refusal(Reason.ACTION_UNREADABLE, id, Failure.value(e));
        }
    }
}
