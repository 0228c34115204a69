package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * The one place where answers are deleted: a child is removed for good, with every answer, drill and action, all at once or
 * not at all. What stays is that the child was removed, so that another computer's file does not bring it back. What was
 * deleted is overwritten in the file; backups still hold it.
 */
final class Removal {
    private static final List<String> DELETIONS = List.of(
            "DELETE FROM answer WHERE drill_nr IN (SELECT nr FROM drill WHERE child_nr = ?)",
            "DELETE FROM drill WHERE child_nr = ?",
            "DELETE FROM act WHERE child_nr = ?",
            "DELETE FROM child WHERE nr = ?");

    private Removal() {}

    static void of(Connection connection, UUID child, Instant at) throws SQLException {
        List<UUID> rows = SameChildren.in(connection).rows(child);
        for (UUID row : rows) {
            int number = Children.numberOf(connection, row);
            for (String deletion : DELETIONS) {
                Database.run(connection, deletion, values -> values.setInt(1, number));
            }
            // What is remembered of a child for the home has a name that ends in the child's id, without hyphens.
            Database.run(
                    connection,
                    "DELETE FROM home_setting WHERE name LIKE ?",
                    values -> values.setString(1, "%" + row.toString().replace("-", "")));
            Database.run(connection, "INSERT INTO removed_child (id, removed_at) VALUES (?, ?)", values -> {
                values.setString(1, row.toString());
                values.setLong(2, at.toEpochMilli());
            });
        }
    }
}
