// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Database;
import fourfold.store.Store;
import fourfold.upkeep.RowCounts.Kind;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What going back to a backup would bring and what it would cost: how many records only the backup has, and how many only
 * the file.
 *
 * @param gained what only the backup has
 * @param lost what only the file has; empty if the file can't be read
 */
public record Difference(RowCounts gained, Optional<RowCounts> lost) {
    private static final Map<Kind, String> ONLY_IN_FIRST = new EnumMap<>(Map.of(
            Kind.CHILD, "SELECT COUNT(*) FROM %1$s.child f WHERE f.id NOT IN (SELECT s.id FROM %2$s.child s)",
            Kind.DRILL, "SELECT COUNT(*) FROM %1$s.drill f WHERE f.id NOT IN (SELECT s.id FROM %2$s.drill s)",
            // A drill's answers are only ever added at its end.
            Kind.ANSWER,
                    "SELECT COALESCE(SUM(MAX(0, f.many - COALESCE(s.many, 0))), 0) FROM"
                            + " (SELECT d.id, COUNT(*) AS many FROM %1$s.drill d JOIN %1$s.answer a ON a.drill_nr = d.nr"
                            + " GROUP BY d.nr) f LEFT JOIN"
                            + " (SELECT d.id, COUNT(*) AS many FROM %2$s.drill d JOIN %2$s.answer a ON a.drill_nr = d.nr"
                            + " GROUP BY d.nr) s ON s.id = f.id",
            Kind.ACTION, "SELECT COUNT(*) FROM %1$s.act f WHERE f.id NOT IN (SELECT s.id FROM %2$s.act s)"));

    /**
     * Compares a file with a backup; neither is changed.
     *
     * @throws RecordsFailure if the backup is not whole or none of ours
     */
    public static Difference of(Path file, Path backup) {
        return of(file, backup, Advance.UNSEEN);
    }

    /** The same, and tells how far it has come. */
    public static Difference of(Path file, Path backup, Advance advance) {
        try (ForeignFile taken = ForeignFile.of(backup, Task.RESTORE, Reason.NO_BACKUP, advance.part(0, 70))) {
            return of(file, taken, advance.part(70, 95));
        }
    }

    private static Difference of(Path file, ForeignFile backup, Advance advance) {
        try (PrivateCopy copy = PrivateCopy.of(file, advance);
                Store store = Store.open(copy.file())) {
            return store.database().read(Task.RESTORE, c -> {
                backup.attachTo(c);
                return new Difference(only(c, "other", "main"), Optional.of(only(c, "main", "other")));
            });
        } catch (SQLException | IOException | RecordsFailure e) {
            return new Difference(alone(backup), Optional.empty());
        }
    }

    /** What the backup holds; without a file that can be read, all of it is gained. */
    private static RowCounts alone(ForeignFile backup) {
        try (Store store = Store.open(backup.file())) {
            return store.database().read(Task.RESTORE, c -> {
                RowCounts all = RowCounts.NONE;
                for (Kind kind : Kind.values()) {
                    String table = kind == Kind.ACTION ? "act" : kind.name().toLowerCase(java.util.Locale.ROOT);
                    all = all.plus(kind, number(c, "SELECT COUNT(*) FROM " + table));
                }
                return all;
            });
        }
    }

    private static RowCounts only(Connection connection, String first, String second) throws SQLException {
        RowCounts counts = RowCounts.NONE;
        for (Map.Entry<Kind, String> kind : ONLY_IN_FIRST.entrySet()) {
            counts = counts.plus(
                    kind.getKey(), number(connection, kind.getValue().formatted(first, second)));
        }
        return counts;
    }

    private static int number(Connection connection, String sql) throws SQLException {
        return Database.query(connection, sql, none -> {}, row -> row.getInt(1)).get(0);
    }
}
