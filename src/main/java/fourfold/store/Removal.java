// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * The one place where answers are deleted: a child is removed for good, with every answer, drill and action, or one drill
 * that was entered by hand and taken back; all at once or not at all. What stays is the name of each thing that was removed, so that another computer's file does not bring it
 * back and, merged the other way, gives it up too; what it does not name stays there. What was deleted is overwritten in
 * the file; backups still hold it.
 */
public final class Removal {
    private static final List<String> NAMED = List.of(
            "SELECT c.id, c.id, 1, 0, %s FROM child c WHERE c.nr = ?",
            "SELECT d.id, c.id, 2, COALESCE((SELECT MAX(a.position) FROM answer a WHERE a.drill_nr = d.nr), 0), %s"
                    + " FROM drill d JOIN child c ON c.nr = d.child_nr WHERE c.nr = ?",
            "SELECT a.id, c.id, 3, 0, %s FROM act a JOIN child c ON c.nr = a.child_nr WHERE c.nr = ?");

    /** What no removal leaves: by those that name things, and by those of earlier programs, which take the whole child. */
    private static final List<String> DELETIONS = List.of(
            "DELETE FROM answer WHERE drill_nr IN (SELECT d.nr FROM drill d JOIN removed_record r ON r.id = d.id)"
                    + " AND position <= (SELECT r.answers FROM drill d JOIN removed_record r ON r.id = d.id"
                    + " WHERE d.nr = answer.drill_nr)",
            "DELETE FROM answer WHERE drill_nr IN (SELECT d.nr FROM drill d JOIN child c ON c.nr = d.child_nr"
                    + " JOIN removed_child r ON r.id = c.id)",
            "DELETE FROM drill WHERE (id IN (SELECT r.id FROM removed_record r)"
                    + " AND NOT EXISTS (SELECT 1 FROM answer a WHERE a.drill_nr = drill.nr))"
                    + " OR child_nr IN (SELECT c.nr FROM child c JOIN removed_child r ON r.id = c.id)",
            "DELETE FROM act WHERE id IN (SELECT r.id FROM removed_record r)"
                    + " OR child_nr IN (SELECT c.nr FROM child c JOIN removed_child r ON r.id = c.id)",
            "DELETE FROM child WHERE (id IN (SELECT r.id FROM removed_record r)"
                    + " AND NOT EXISTS (SELECT 1 FROM drill d WHERE d.child_nr = child.nr)"
                    + " AND NOT EXISTS (SELECT 1 FROM act a WHERE a.child_nr = child.nr))"
                    + " OR id IN (SELECT r.id FROM removed_child r)");

    private Removal() {}

    static void of(Connection connection, UUID child, Instant at) throws SQLException {
        for (UUID row : SameChildren.in(connection).rows(child)) {
            int number = Children.numberOf(connection, row);
            for (String named : NAMED) {
                // A drill may have been removed in part before.
                String known = " AND NOT EXISTS (SELECT 1 FROM removed_record r WHERE r.id = "
                        + named.substring("SELECT ".length(), named.indexOf(',')) + ")";
                Database.run(
                        connection,
                        "INSERT INTO removed_record (id, child_id, kind, answers, removed_at) "
                                + named.formatted(at.toEpochMilli()) + known,
                        values -> values.setInt(1, number));
            }
            Database.run(
                    connection,
                    "UPDATE removed_record SET answers = (SELECT MAX(a.position) FROM answer a JOIN drill d"
                            + " ON d.nr = a.drill_nr WHERE d.id = removed_record.id)"
                            + " WHERE kind = 2 AND answers < (SELECT MAX(a.position) FROM answer a JOIN drill d"
                            + " ON d.nr = a.drill_nr WHERE d.id = removed_record.id)",
                    none -> {});
            // What is remembered of a child for the home has a name that ends in the child's id, without hyphens.
            Database.run(
                    connection,
                    "DELETE FROM home_setting WHERE name LIKE ?",
                    values -> values.setString(1, "%" + row.toString().replace("-", "")));
        }
        carryOut(connection);
    }

    /** Removes one drill with its answers. */
    static void ofDrill(Connection connection, UUID drill, Instant at) throws SQLException {
        Database.run(
                connection,
                "INSERT INTO removed_record (id, child_id, kind, answers, removed_at) "
                        + NAMED.get(1).formatted(at.toEpochMilli()).replace("c.nr = ?", "d.id = ?")
                        + " AND NOT EXISTS (SELECT 1 FROM removed_record r WHERE r.id = d.id)",
                values -> values.setString(1, drill.toString()));
        carryOut(connection);
    }

    /** Deletes what the removals in the file name. */
    public static void carryOut(Connection connection) throws SQLException {
        for (String deletion : DELETIONS) {
            Database.run(connection, deletion, none -> {});
        }
    }
}
