// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.log.ParentAction;
import fourfold.log.Reason;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** The children, under the names they have today. */
public final class Children {
    /** The setting that holds a child's later name. */
    public static final String NAME = ParentAction.Choose.NAME;

    /** The setting that says whether a child was put away: yes or no. */
    static final String ARCHIVED = ParentAction.Choose.AWAY;

    /** A child with today's name, and whether it was put away. */
    public record Known(Child child, boolean archived) {}

    private Children() {}

    /** All children in the order in which they were added. */
    public static List<Known> all(Connection connection) throws SQLException {
        SameChildren same = SameChildren.in(connection);
        Map<UUID, List<ActionRecord>> choices =
                Actions.choices(connection).stream().collect(Collectors.groupingBy(a -> same.known(a.child())));
        List<Child> added = Database.query(
                connection,
                "SELECT id, COALESCE(name, ''), created_at FROM child ORDER BY created_at, nr",
                none -> {},
                row -> child(Codes.id(row, 1), row.getString(2), Instant.ofEpochMilli(row.getLong(3))));
        List<Known> all = new ArrayList<>();
        for (Child child : added) {
            if (same.known(child.id()).equals(child.id())) {
                all.add(today(child, ActionRecord.inForce(choices.getOrDefault(child.id(), List.of()))));
            }
        }
        return List.copyOf(all);
    }

    private static Child child(UUID id, String name, Instant since) {
        try {
            return new Child(id, name, since);
        } catch (InvalidValue e) {
            throw new Refusal(e.problem());
        }
    }

    /** The number of the child's row. */
    public static int numberOf(Connection connection, UUID child) throws SQLException {
        return Database.query(
                        connection,
                        "SELECT nr FROM child WHERE id = ?",
                        values -> values.setString(1, child.toString()),
                        row -> row.getInt(1))
                .stream()
                .findFirst()
                .orElseThrow(() -> new Refusal(Reason.CHILD_UNKNOWN, child));
    }

    static void add(Connection connection, Child child) throws SQLException {
        List<String> same = Database.query(
                connection,
                "SELECT name FROM child WHERE id = ? AND created_at = ?",
                values -> {
                    values.setString(1, child.id().toString());
                    values.setLong(2, child.since().toEpochMilli());
                },
                row -> row.getString(1));
        if (same.contains(child.name())) {
            return;
        }
        Database.run(connection, "INSERT INTO child (id, name, created_at) VALUES (?, ?, ?)", values -> {
            values.setString(1, child.id().toString());
            values.setString(2, child.name());
            values.setLong(3, child.since().toEpochMilli());
        });
        checkNameOf(connection, child.id());
    }

    /** Refuses if another child is called the same, so that a name typed by a parent means one child. */
    static void checkNameOf(Connection connection, UUID child) throws SQLException {
        List<Known> all = all(connection);
        Optional<Known> mine =
                all.stream().filter(k -> k.child().id().equals(child)).findFirst();
        for (Known other : all) {
            boolean clash = mine.filter(m -> !m.equals(other))
                    .map(m -> m.child().name())
                    .filter(n -> ChildName.same(n, other.child().name()))
                    .isPresent();
            if (clash) {
                throw new Refusal(
                        other.archived() ? Reason.NAME_TAKEN_AWAY : Reason.NAME_TAKEN,
                        other.child().name());
            }
        }
    }

    private static Known today(Child added, List<ActionRecord> inForce) {
        Child child = added;
        boolean archived = false;
        for (ActionRecord action : inForce) {
            if (action.action() instanceof ParentAction.Choose choose
                    && choose.setting().equals(NAME)) {
                child = child(child.id(), choose.chosen(), child.since());
            } else if (action.action() instanceof ParentAction.Choose choose
                    && choose.setting().equals(ARCHIVED)) {
                archived = choose.chosen().equals("yes");
            }
        }
        return new Known(child, archived);
    }
}
