// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Which migrations the program knows, and how far a file has come. Asking the file's own history is far quicker than
 * starting Flyway, which is needed only when there is something to migrate.
 *
 * @param locations where the migrations are on the class path
 * @param steps version and checksum of each, oldest first
 */
public record Schema(List<String> locations, List<Step> steps) {
    /** The migrations of this program; a test compares them with the files. */
    public static final Schema TODAY = new Schema(
            List.of("classpath:db/migration"),
            List.of(
                    new Step("1", -290438652),
                    new Step("2", 1434903109),
                    new Step("3", -1060354799),
                    new Step("4", -1330538566)));

    /** One migration as Flyway's history names it. */
    record Step(String version, int checksum) {
        String words() {
            return version + ":" + checksum;
        }
    }

    /** How a file's schema compares with this program's. */
    public enum State {
        /** Nothing in it yet. */
        EMPTY,
        /** As this program makes it. */
        CURRENT,
        /** Made by an older program. */
        OLDER,
        /** Made by a newer program. */
        NEWER,
        /** Has our history, and tables, indexes or triggers that are not as ours. */
        CHANGED,
        /** Has other tables, or another history. */
        FOREIGN
    }

    /** Compares the file's history and its tables; only reads. */
    public State stateOf(Connection connection) throws SQLException {
        State state = historyOf(connection);
        boolean ours = state == State.CURRENT || state == State.OLDER;
        return ours && changed(connection, false).isPresent() ? State.CHANGED : state;
    }

    /**
     * The first of the file's tables, indexes, views and triggers that is not as the file's own history makes it.
     *
     * @param alone whether also tables and views that touch none of ours are too many
     */
    public Optional<String> changed(Connection connection, boolean alone) throws SQLException {
        return changed(connection, applied(connection).size(), alone);
    }

    @SuppressWarnings(
            "ReferenceEquality") // To compare records at every start would take longer than to look at the tables.
    private Optional<String> changed(Connection connection, int applied, boolean alone) throws SQLException {
        SchemaObjects expected =
                applied == steps.size() && this == TODAY ? SchemaObjects.today() : SchemaObjects.madeBy(this, applied);
        return alone ? expected.strange(connection) : expected.changed(connection);
    }

    private State historyOf(Connection connection) throws SQLException {
        List<String> tables = Database.query(
                connection,
                "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' LIMIT 1000",
                none -> {},
                row -> row.getString(1));
        if (!tables.contains("flyway_schema_history")) {
            return tables.isEmpty() ? State.EMPTY : State.FOREIGN;
        }
        if (!isPlainHistory(connection)) {
            return State.FOREIGN;
        }
        List<String> applied = applied(connection);
        List<String> known = new ArrayList<>();
        for (Step step : steps) {
            known.add(step.words());
        }
        if (applied.equals(known)) {
            return State.CURRENT;
        }
        int shared = Math.min(applied.size(), known.size());
        if (!applied.subList(0, shared).equals(known.subList(0, shared))) {
            return State.FOREIGN;
        }
        if (applied.size() > shared) {
            return State.NEWER;
        }
        return applied.isEmpty() && tables.size() == 1 ? State.EMPTY : State.OLDER;
    }

    private static List<String> applied(Connection connection) throws SQLException {
        return Database.query(
                connection,
                "SELECT version, checksum FROM flyway_schema_history WHERE version IS NOT NULL"
                        + " ORDER BY installed_rank LIMIT 1000",
                none -> {},
                row -> new Step(row.getString(1), row.getInt(2)).words());
    }

    private static boolean isPlainHistory(Connection connection) throws SQLException {
        return Database.query(
                        connection,
                        "SELECT sql FROM sqlite_schema WHERE name = 'flyway_schema_history'",
                        none -> {},
                        row -> row.getString(1))
                .stream()
                .allMatch(SchemaObjects::isPlainHistory);
    }

    /** The newest version, for the name of a copy. */
    String newest() {
        return steps.get(steps.size() - 1).version();
    }

    @Override
    public String toString() {
        return steps.stream().map(Step::words).collect(Collectors.joining(" "));
    }
}
