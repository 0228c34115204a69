// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.ChildName;
import fourfold.store.Answers;
import fourfold.store.Connections;
import fourfold.store.Database;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Takes a removal back where a copy of the child remains, such as the backup that was made before it. What a removal names
 * stays removed on every computer; so the child comes back under new ids, which no removal names. They are made from the
 * old ones: two computers that bring back the same child from their copies have one child.
 */
final class BroughtBack {
    private final Connection copy;
    private final Set<UUID> removed;

    private BroughtBack(Connection copy, Set<UUID> removed) {
        this.copy = copy;
        this.removed = removed;
    }

    /**
     * Gives removed children new ids in a copy that only this program knows.
     *
     * @param names the names under which they were added
     * @param removed the ids of all that was removed
     */
    static void in(Path file, Set<String> names, Set<UUID> removed) throws SQLException {
        if (names.isEmpty()) {
            return;
        }
        try (Connection connection = Connections.fresh(file)) {
            BroughtBack back = new BroughtBack(connection, removed);
            Connections.run(connection, "BEGIN IMMEDIATE");
            for (Map.Entry<UUID, String> child : back.children().entrySet()) {
                if (removed.contains(child.getKey())
                        && names.stream().anyMatch(n -> ChildName.same(n, child.getValue()))) {
                    back.bring(child.getKey());
                }
            }
            Connections.run(connection, "COMMIT");
        }
    }

    private Map<UUID, String> children() throws SQLException {
        Map<UUID, String> children = new LinkedHashMap<>();
        Database.query(
                copy,
                "SELECT id, name FROM child",
                none -> {},
                row -> children.put(UUID.fromString(row.getString(1)), String.valueOf(row.getString(2))));
        return children;
    }

    private void bring(UUID child) throws SQLException {
        String of = " WHERE child_nr = (SELECT nr FROM child WHERE id = '" + child + "')";
        for (UUID drill : ids("SELECT id FROM drill" + of)) {
            set("UPDATE drill SET id = ? WHERE id = ?", anew(drill), drill);
            renewChecksums(anew(drill));
        }
        List<UUID> actions = ids("SELECT id FROM act" + of);
        for (UUID action : actions) {
            set("UPDATE act SET detail = ? WHERE kind = 'undo' AND detail = ?", anew(action), action);
        }
        for (UUID action : actions) {
            set("UPDATE act SET id = ? WHERE id = ?", anew(action), action);
        }
        set("UPDATE child SET id = ? WHERE id = ?", anew(child), child);
    }

    /** An answer's checksum holds for it in its drill. */
    private void renewChecksums(UUID drill) throws SQLException {
        for (Map.Entry<Integer, Integer> sum : Answers.checksums(copy, drill).entrySet()) {
            Database.run(
                    copy,
                    "UPDATE answer SET checksum = ? WHERE position = ?"
                            + " AND drill_nr = (SELECT nr FROM drill WHERE id = ?)",
                    values -> {
                        values.setInt(1, sum.getValue());
                        values.setInt(2, sum.getKey());
                        values.setString(3, drill.toString());
                    });
        }
    }

    private List<UUID> ids(String sql) throws SQLException {
        return Database.query(copy, sql, none -> {}, row -> UUID.fromString(row.getString(1)));
    }

    private void set(String sql, UUID now, UUID before) throws SQLException {
        Database.run(copy, sql, values -> {
            values.setString(1, now.toString());
            values.setString(2, before.toString());
        });
    }

    /** A child may have been removed and brought back more than once. */
    private UUID anew(UUID id) {
        UUID next = UUID.nameUUIDFromBytes((id + "-back").getBytes(StandardCharsets.UTF_8));
        return removed.contains(next) ? anew(next) : next;
    }
}
