// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.InvalidValue;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Reason;
import fourfold.store.ActionText;
import fourfold.store.AnswerRow;
import fourfold.store.AnswerValues;
import fourfold.store.Database;
import fourfold.store.ManyRows;
import fourfold.store.Refusal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * The rows of a file from elsewhere, each looked at value by value before it is written into a fresh file. Its tables are
 * known to be as ours; what stands in them is not.
 */
final class ForeignRows {
    private static final UUID SOMEONE = new UUID(0, 0);
    private static final String MADE = "made_at";

    /** What a row's values mean together, with the ids of drills by their numbers; it throws if they mean nothing. */
    private interface Meaning {
        Object of(Map<Long, UUID> drills, Object... values);
    }

    /** A table, in the order in which rows refer to each other, with the most rows that a family can have. */
    private record Table(String name, int most, List<Column> columns, Meaning meaning) {
        List<String> names() {
            return columns.stream().map(Column::name).toList();
        }
    }

    private static final List<Table> TABLES = List.of(
            new Table(
                    "child",
                    1_000,
                    List.of(Column.number("nr"), id(), Column.text("name", 80), Column.number("created_at")),
                    (drills, v) -> new Child(uuid(v[1]), (String) v[2], instant(v[3]))),
            new Table(
                    "drill",
                    500_000,
                    List.of(
                            Column.number("nr"),
                            id(),
                            Column.number("child_nr"),
                            Column.number("started_at"),
                            Column.number("zone_offset_min"),
                            Column.number("planned_s"),
                            Column.number("seed")),
                    (drills, v) -> new DrillSession(
                            uuid(v[1]),
                            SOMEONE,
                            new Moment(instant(v[3]), small(v[4])).at(),
                            small(v[4]),
                            Duration.ofSeconds(small(v[5])),
                            number(v[6]))),
            new Table(
                    "act",
                    100_000,
                    List.of(
                            Column.number("nr"),
                            id(),
                            Column.number("child_nr"),
                            Column.number(MADE),
                            Column.number("zone_offset_min"),
                            Column.text("kind", 10),
                            Column.text("detail", 400)),
                    (drills, v) -> action(v)),
            new Table("answer", 5_000_000, answerColumns(), ForeignRows::answer),
            new Table(
                    "gate",
                    1,
                    List.of(
                            Column.number("nr"),
                            Column.text("hash", 400),
                            Column.number("set_at"),
                            Column.number("wrong_tries"),
                            Column.number("wrong_at").orNull()),
                    (drills, v) -> instant(v[2])),
            new Table(
                    "removed_child",
                    100_000,
                    List.of(id(), Column.number("removed_at")),
                    (drills, v) -> List.of(uuid(v[0]), instant(v[1]))),
            new Table(
                    "removed_record",
                    1_000_000,
                    List.of(
                            id(),
                            Column.text("child_id", 36),
                            Column.number("kind"),
                            Column.number("answers"),
                            Column.number("removed_at")),
                    (drills, v) -> List.of(uuid(v[0]), uuid(v[1]))),
            new Table(
                    "home_setting",
                    10_000,
                    List.of(Column.text("name", 40), Column.text("text", 400)),
                    (drills, v) -> v));

    private final Connection from;
    private final Connection to;
    private final Map<Long, UUID> drills = new HashMap<>();
    private long copied;

    ForeignRows(Connection from, Connection to) {
        this.from = from;
        this.to = to;
    }

    private static Column id() {
        return Column.text("id", 36);
    }

    private static List<Column> answerColumns() {
        List<Column> columns = new ArrayList<>(List.of(Column.number("drill_nr"), Column.number("position")));
        for (String name : AnswerRow.COLUMNS) {
            Column column = name.equals("typed") ? Column.text(name, Answer.LONGEST_TYPED) : Column.number(name);
            columns.add(AnswerRow.NULLABLE.contains(name) ? column.orNull() : column);
        }
        columns.add(Column.number(AnswerRow.CHECKSUM).orNull());
        return columns;
    }

    private static Object action(Object... v) {
        UUID id = uuid(v[1]);
        Instant at = new Moment(instant(v[3]), small(v[4])).at();
        ParentAction action = new ActionText((String) v[5], (String) v[6]).action();
        if (action instanceof ParentAction.Choose choose) {
            if (choose.setting().equals(ParentAction.Choose.NAME)) {
                return new Child(SOMEONE, choose.chosen(), at);
            } else if (choose.setting().equals(ParentAction.Choose.SAME)) {
                return uuid(choose.chosen());
            }
        }
        return List.of(id, action);
    }

    private static Object answer(Map<Long, UUID> drills, Object... v) {
        UUID drill = drills.get(number(v[0]));
        if (drill == null) {
            throw new InvalidValue(Reason.DRILL_UNKNOWN, v[0]);
        }
        OptionalLong kept = v[14] == null ? OptionalLong.empty() : OptionalLong.of(number(v[14]));
        return AnswerValues.of(1, 14, v).answer(SOMEONE, drill, kept);
    }

    /**
     * Looks whether a table can have so many rows.
     *
     * @throws Refusal if a family's can't
     */
    static void checkCount(String name, long rows) {
        for (Table table : TABLES) {
            if (table.name().equals(name) && rows > table.most()) {
                throw new Refusal(Reason.TOO_MANY_ROWS, table.name(), table.most());
            }
        }
    }

    /**
     * Counts before anything is read in full; gives the number of all rows.
     *
     * @throws Refusal if a table has more rows than a family's can have
     */
    static long checkCounts(Connection connection) throws SQLException {
        long all = 0;
        List<String> there = Database.query(
                connection, "SELECT name FROM sqlite_schema WHERE type = 'table'", none -> {}, row -> row.getString(1));
        for (Table table : TABLES) {
            // An older file has fewer tables.
            long rows = !there.contains(table.name())
                    ? 0
                    : Database.query(
                                    connection,
                                    "SELECT COUNT(*) FROM " + table.name(),
                                    none -> {},
                                    row -> row.getLong(1))
                            .get(0);
            checkCount(table.name(), rows);
            all += rows;
        }
        return all;
    }

    /**
     * Copies all of them, or throws.
     *
     * @throws Refusal with the table and the row that no Fourfold writes
     */
    void copy(Advance advance) throws SQLException {
        long all = checkCounts(from);
        // A transaction that the driver did not begin itself it tries to begin once more with every row.
        to.setAutoCommit(false);
        for (Table table : TABLES) {
            copy(table, advance, all);
        }
        to.commit();
        to.setAutoCommit(true);
    }

    private void copy(Table table, Advance advance, long all) throws SQLException {
        int width = table.columns().size();
        Object[] values = new Object[width];
        long number = 0;
        try (ManyRows insert = new ManyRows(to, table.name(), table.names(), (reason, row) -> {
                    throw reason;
                });
                PreparedStatement select = from.prepareStatement(
                        "SELECT " + String.join(", ", table.names()) + " FROM " + table.name() + " ORDER BY rowid");
                ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                number++;
                for (int i = 0; i < width; i++) {
                    values[i] = rows.getObject(i + 1);
                    if (!table.columns().get(i).admits(values[i])) {
                        throw new Refusal(Reason.ROW_UNFIT, number, table.name());
                    }
                }
                check(table, number, values);
                if (table.name().equals("drill")) {
                    drills.put(number(values[0]), uuid(values[1]));
                }
                insert.add(values);
                advance.to(++copied, all);
            }
            insert.end();
        }
    }

    private void check(Table table, long number, Object... values) {
        try {
            table.meaning().of(drills, values);
        } catch (InvalidValue e) {
            boolean changed = e.problem().reason() == Reason.ANSWER_CHANGED;
            throw changed ? new Refusal(e.problem()) : new Refusal(Reason.ROW_UNFIT, number, table.name());
        } catch (IllegalArgumentException | ArithmeticException e) {
            throw new Refusal(Reason.ROW_UNFIT, number, table.name());
        }
    }

    private static UUID uuid(Object value) {
        UUID id = UUID.fromString((String) value);
        if (!id.toString().equals(value)) {
            throw new InvalidValue(Reason.ID, "id", value);
        }
        return id;
    }

    private static long number(Object value) {
        return ((Number) value).longValue();
    }

    private static int small(Object value) {
        return Math.toIntExact(number(value));
    }

    private static Instant instant(Object value) {
        return Instant.ofEpochMilli(number(value));
    }
}
