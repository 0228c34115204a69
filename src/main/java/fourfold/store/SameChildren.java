// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.ParentAction;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Which rows are one child: a child who was added on two computers has two rows, and a parent has said that they are
 * the same. Both rows stay as they are; that they are one is a choice in the log of actions, so that it goes along to every
 * computer and can be taken back.
 */
public final class SameChildren {
    /** The setting that names another row of the same child. */
    static final String SAME = ParentAction.Choose.SAME;

    private final Map<UUID, List<UUID>> rows;

    private SameChildren(Map<UUID, List<UUID>> rows) {
        this.rows = rows;
    }

    /** Reads from the log of actions which rows are one child. */
    public static SameChildren in(Connection connection) throws SQLException {
        boolean any = !Database.query(
                        connection,
                        "SELECT 1 FROM act WHERE kind = 'choose' AND detail LIKE 'same=%' LIMIT 1",
                        none -> {},
                        row -> 1)
                .isEmpty();
        return any ? of(added(connection, "child"), Actions.choices(connection)) : new SameChildren(Map.of());
    }

    /** What an attached database called {@code other} says. */
    public static SameChildren ofOther(Connection connection) throws SQLException {
        return of(added(connection, "other.child"), Actions.choicesOfOther(connection));
    }

    /** The children's ids, the first added first. */
    private static List<UUID> added(Connection connection, String table) throws SQLException {
        return Database.query(
                connection,
                "SELECT id FROM " + table + " ORDER BY created_at, id",
                none -> {},
                row -> Codes.id(row, 1));
    }

    private static SameChildren of(List<UUID> added, List<ActionRecord> choices) {
        Map<UUID, List<UUID>> rows = new HashMap<>();
        for (ActionRecord action : ActionRecord.inForce(choices)) {
            if (action.action() instanceof ParentAction.Choose choose
                    && choose.setting().equals(SAME)) {
                UUID other = UUID.fromString(choose.chosen());
                List<UUID> both = new ArrayList<>(rows.getOrDefault(action.child(), List.of(action.child())));
                both.addAll(rows.getOrDefault(other, List.of(other)));
                List<UUID> sorted =
                        added.stream().filter(both::contains).distinct().toList();
                sorted.forEach(id -> rows.put(id, sorted));
            }
        }
        return new SameChildren(rows);
    }

    /** The id by which this child is known: that of the row that was added first. */
    UUID known(UUID child) {
        return rows(child).get(0);
    }

    /** The ids of all rows of this child. */
    public List<UUID> rows(UUID child) {
        return rows.getOrDefault(child, List.of(child));
    }

    /** The action that says that two children are one: the same action, whichever computer makes it. */
    public static ActionRecord joining(UUID one, Instant oneSince, UUID other, Instant otherSince) {
        boolean inOrder = oneSince.isBefore(otherSince)
                || (oneSince.equals(otherSince) && one.toString().compareTo(other.toString()) < 0);
        UUID first = inOrder ? one : other;
        UUID second = inOrder ? other : one;
        UUID id = UUID.nameUUIDFromBytes((first + " is " + second).getBytes(StandardCharsets.UTF_8));
        Instant at = inOrder ? otherSince : oneSince;
        return new ActionRecord(id, first, at, 0, new ParentAction.Choose(SAME, second.toString()));
    }

    /** An IN clause with one placeholder for each id. */
    static String oneOf(List<UUID> ids) {
        return " IN (" + String.join(", ", Collections.nCopies(ids.size(), "?")) + ")";
    }

    /** Fills the placeholders of {@link #oneOf}. */
    static Database.Values filling(List<UUID> ids) {
        return values -> {
            for (int i = 0; i < ids.size(); i++) {
                values.setString(i + 1, ids.get(i).toString());
            }
        };
    }
}
