// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Reason;
import fourfold.store.AnswerRow;
import fourfold.store.Database;
import fourfold.store.Failure;
import fourfold.store.Refusal;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/** The rows of an attached database called {@code other}, taken over where they are not known yet. */
final class MergedRows {
    /** The names under which a page's number, and whose it is, are kept for the home. */
    static final String PAGES = "page[1-9][0-9][0-9][0-9]*";

    /** A page's text that ends in the id of a drill. */
    private static final String ENTERED = "* ????-??-?? * ????????-????-????-????-????????????";

    /** The characters of a page's text that leave room for one drill more. */
    private static final int ROOM = 360;

    private final Connection connection;

    MergedRows(Connection connection) {
        this.connection = connection;
    }

    /** Refuses if one id means two different things: then one of the files was tampered with or damaged. */
    void refuseContradictions() throws SQLException {
        refuse(Reason.FILES_DIFFER_CHILD, """
                SELECT o.id FROM other.child o JOIN main.child m ON m.id = o.id
                WHERE m.name <> o.name OR m.created_at <> o.created_at
                """);
        refuse(Reason.FILES_DIFFER_DRILL, """
                SELECT o.id FROM other.drill o JOIN main.drill m ON m.id = o.id
                JOIN other.child oc ON oc.nr = o.child_nr JOIN main.child mc ON mc.nr = m.child_nr
                WHERE oc.id <> mc.id OR m.started_at <> o.started_at OR m.zone_offset_min <> o.zone_offset_min
                  OR m.planned_s <> o.planned_s OR m.seed <> o.seed
                """);
        refuse(Reason.FILES_DIFFER_ANSWER, """
                SELECT od.id FROM other.answer o JOIN other.drill od ON od.nr = o.drill_nr
                JOIN main.drill md ON md.id = od.id
                JOIN main.answer m ON m.drill_nr = md.nr AND m.position = o.position
                WHERE %s
                """.formatted(columns(" OR ", "m.%1$s IS NOT o.%1$s")));
        refuse(Reason.FILES_DIFFER_ACTION, """
                SELECT o.id FROM other.act o JOIN main.act m ON m.id = o.id
                JOIN other.child oc ON oc.nr = o.child_nr JOIN main.child mc ON mc.nr = m.child_nr
                WHERE oc.id <> mc.id OR m.made_at <> o.made_at OR m.zone_offset_min <> o.zone_offset_min
                  OR m.kind <> o.kind OR m.detail <> o.detail
                """);
    }

    private void refuse(Reason difference, String sql) throws SQLException {
        List<String> found = Database.query(connection, sql + " LIMIT 1", none -> {}, row -> row.getString(1));
        if (!found.isEmpty()) {
            throw new Refusal(difference, Failure.oneLine(found.get(0)));
        }
    }

    /** What was removed on either computer is removed on both; where both name a drill, as far as the farther one goes. */
    void addRemovals() throws SQLException {
        add("""
                INSERT INTO main.removed_child (id, removed_at)
                SELECT o.id, o.removed_at FROM other.removed_child o
                WHERE NOT EXISTS (SELECT 1 FROM main.removed_child m WHERE m.id = o.id)
                """);
        add("""
                UPDATE main.removed_record SET answers = (SELECT o.answers FROM other.removed_record o
                  WHERE o.id = removed_record.id)
                WHERE answers < (SELECT o.answers FROM other.removed_record o WHERE o.id = removed_record.id)
                """);
        add("""
                INSERT INTO main.removed_record (id, child_id, kind, answers, removed_at)
                SELECT o.id, o.child_id, o.kind, o.answers, o.removed_at FROM other.removed_record o
                WHERE NOT EXISTS (SELECT 1 FROM main.removed_record m WHERE m.id = o.id)
                """);
    }

    /** The names of these children of a database, {@code main} or {@code other}. */
    Map<UUID, String> names(String database) throws SQLException {
        Map<UUID, String> names = new LinkedHashMap<>();
        Database.query(
                connection,
                "SELECT id, name FROM " + database + ".child ORDER BY nr",
                none -> {},
                row -> names.put(UUID.fromString(row.getString(1)), row.getString(2)));
        return names;
    }

    /** How many rows each table has that were added after the given row. */
    int added(String table, long after) throws SQLException {
        return (int) one("SELECT COUNT(*) FROM main." + table + " WHERE rowid > " + after);
    }

    /** The last row of a table. */
    long last(String table) throws SQLException {
        return one("SELECT COALESCE(MAX(rowid), 0) FROM main." + table);
    }

    private long one(String sql) throws SQLException {
        return Database.query(connection, sql, none -> {}, row -> row.getLong(1))
                .get(0);
    }

    void addChildren() throws SQLException {
        add("""
                INSERT INTO main.child (id, name, created_at)
                SELECT o.id, o.name, o.created_at FROM other.child o
                WHERE NOT EXISTS (SELECT 1 FROM main.child m WHERE m.id = o.id) ORDER BY o.nr
                """);
    }

    void addDrills() throws SQLException {
        add("""
                INSERT INTO main.drill (id, child_nr, started_at, zone_offset_min, planned_s, seed)
                SELECT o.id, mc.nr, o.started_at, o.zone_offset_min, o.planned_s, o.seed
                FROM other.drill o JOIN other.child oc ON oc.nr = o.child_nr JOIN main.child mc ON mc.id = oc.id
                WHERE NOT EXISTS (SELECT 1 FROM main.drill m WHERE m.id = o.id) ORDER BY o.nr
                """);
    }

    void addAnswers() throws SQLException {
        add("""
                INSERT INTO main.answer (drill_nr, position, %s, %s)
                SELECT md.nr, o.position, %s, o.%s
                FROM other.answer o JOIN other.drill od ON od.nr = o.drill_nr JOIN main.drill md ON md.id = od.id
                WHERE NOT EXISTS (SELECT 1 FROM main.answer m WHERE m.drill_nr = md.nr AND m.position = o.position)
                """.formatted(columns(", ", "%s"), AnswerRow.CHECKSUM, columns(", ", "o.%s"), AnswerRow.CHECKSUM));
    }

    void addActions() throws SQLException {
        add("""
                INSERT INTO main.act (id, child_nr, made_at, zone_offset_min, kind, detail)
                SELECT o.id, mc.nr, o.made_at, o.zone_offset_min, o.kind, o.detail
                FROM other.act o JOIN other.child oc ON oc.nr = o.child_nr JOIN main.child mc ON mc.id = oc.id
                WHERE NOT EXISTS (SELECT 1 FROM main.act m WHERE m.id = o.id) ORDER BY o.nr
                """);
    }

    /**
     * Pages that were printed elsewhere come along, each of a child who is here, and so does the drill that holds the answers of
     * one that waits here. A page that was entered on both has both drills, and the parent is told; of more than two the first
     * and the last are taken in. Where two computers gave one number to two pages of a child, each keeps its own.
     */
    void addPages() throws SQLException {
        add("""
                UPDATE main.home_setting SET text = (SELECT o.text FROM other.home_setting o WHERE o.name = home_setting.name)
                WHERE name GLOB '%1$s' AND EXISTS (SELECT 1 FROM other.home_setting o
                  WHERE o.name = home_setting.name AND SUBSTR(o.text, 1, LENGTH(o.text) - 37) = home_setting.text)
                """.formatted(PAGES));
        for (String drill : List.of("SUBSTR(o.text, LENGTH(" + bare("o.text") + ") + 2, 36)", "SUBSTR(o.text, -36)")) {
            add("""
                    UPDATE main.home_setting
                    SET text = text || ' ' || (SELECT %1$s FROM other.home_setting o WHERE o.name = home_setting.name)
                    WHERE name GLOB '%2$s' AND LENGTH(text) < %3$d AND text GLOB '%4$s' AND EXISTS (
                      SELECT 1 FROM other.home_setting o WHERE o.name = home_setting.name AND o.text GLOB '%4$s'
                        AND %5$s = %6$s AND INSTR(home_setting.text, %1$s) = 0)
                    """.formatted(drill, PAGES, ROOM, ENTERED, bare("o.text"), bare("home_setting.text")));
        }
        add("""
                INSERT INTO main.home_setting (name, text) SELECT o.name, o.text FROM other.home_setting o
                WHERE o.name GLOB '%1$s' AND NOT EXISTS (SELECT 1 FROM main.home_setting m WHERE m.name = o.name)
                  AND EXISTS (SELECT 1 FROM main.child c WHERE REPLACE(c.id, '-', '') = SUBSTR(o.name, 9))
                ORDER BY o.name
                """.formatted(PAGES));
    }

    /**
     * What an answer's row holds beside its place, each column in this form. An answer that an earlier program kept is the
     * same with and without its checksum.
     */
    private static String columns(String between, String form) {
        return AnswerRow.COLUMNS.stream().map(form::formatted).collect(Collectors.joining(between));
    }

    private void add(String sql) throws SQLException {
        Database.run(connection, sql, none -> {});
    }

    /** A page's text without the drills: its kind, its day of ten characters, and what it asks, each after a blank. */
    private static String bare(String text) {
        return "SUBSTR(%1$s, 1, INSTR(%1$s, ' ') + 10 + INSTR(SUBSTR(%1$s, INSTR(%1$s, ' ') + 12) || ' ', ' '))"
                .formatted(text);
    }
}
