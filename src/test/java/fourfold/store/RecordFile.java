// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordSet;
import fourfold.log.RecordsFailure.Task;
import fourfold.log.Removal;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** Writes a set of records to a file and reads it back row by row, whatever the program would make of them together. */
public final class RecordFile {
    private RecordFile() {}

    /** Fills a file that has no rows yet. */
    public static void write(Store store, RecordSet records) {
        store.database().write(Task.KEEP_ANSWERS, c -> {
            for (Child child : records.children()) {
                Database.run(c, "INSERT INTO child (id, name, created_at) VALUES (?, ?, ?)", values -> {
                    values.setString(1, child.id().toString());
                    values.setString(2, child.name());
                    values.setLong(3, child.since().toEpochMilli());
                });
            }
            for (DrillSession drill : records.drills()) {
                DrillSessions.begin(c, drill);
            }
            Answers.keep(
                    c,
                    records.answers().stream()
                            .sorted(Comparator.comparing(Answer::position))
                            .toList());
            for (ActionRecord action : records.actions()) {
                write(c, action);
            }
            for (Removal removal : records.removals()) {
                write(c, removal);
            }
            return records;
        });
    }

    private static void write(Connection c, ActionRecord action) throws SQLException {
        ActionText text = ActionText.of(action.action());
        int child = Children.numberOf(c, action.child());
        Database.run(
                c,
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail) VALUES (?, ?, ?, ?, ?, ?)",
                values -> {
                    values.setString(1, action.id().toString());
                    values.setInt(2, child);
                    values.setLong(3, action.at().toEpochMilli());
                    values.setInt(4, action.zoneOffsetMinutes());
                    values.setString(5, text.kind());
                    values.setString(6, text.detail());
                });
    }

    private static void write(Connection c, Removal removal) throws SQLException {
        if (removal.kind() == Removal.Kind.WHOLE_CHILD) {
            Database.run(
                    c,
                    "INSERT INTO removed_child (id, removed_at) VALUES (?, 1)",
                    values -> values.setString(1, removal.id().toString()));
        } else {
            Database.run(
                    c,
                    "INSERT INTO removed_record (id, child_id, kind, answers, removed_at) VALUES (?, ?, ?, ?, 1)",
                    values -> {
                        values.setString(1, removal.id().toString());
                        values.setString(2, removal.child().toString());
                        values.setInt(3, 1 + removal.kind().ordinal());
                        values.setInt(4, removal.answers());
                    });
        }
    }

    /** All rows of a file. */
    public static RecordSet read(Store store) {
        return store.database().read(Task.READ_ANSWERS, RecordFile::read);
    }

    private static RecordSet read(Connection c) throws SQLException {
        Set<Child> children = new HashSet<>(Database.query(
                c,
                "SELECT id, name, created_at FROM child",
                none -> {},
                row -> new Child(Codes.id(row, 1), row.getString(2), Instant.ofEpochMilli(row.getLong(3)))));
        Set<DrillSession> drills = new HashSet<>(Database.query(
                c,
                "SELECT d.id, c.id, d.started_at, d.zone_offset_min, d.planned_s, d.seed"
                        + " FROM drill d JOIN child c ON c.nr = d.child_nr",
                none -> {},
                row -> new DrillSession(
                        Codes.id(row, 1),
                        Codes.id(row, 2),
                        Instant.ofEpochMilli(row.getLong(3)),
                        row.getInt(4),
                        Duration.ofSeconds(row.getInt(5)),
                        row.getLong(6))));
        Set<Answer> answers = new HashSet<>();
        for (Child child : children) {
            answers.addAll(Database.query(
                    c,
                    AnswerRow.SELECT + "JOIN child c ON c.nr = d.child_nr WHERE c.id = ?",
                    values -> values.setString(1, child.id().toString()),
                    new AnswerRow(child.id())::read));
        }
        Set<ActionRecord> actions = new HashSet<>(Database.query(
                c,
                "SELECT a.id, c.id, a.made_at, a.zone_offset_min, a.kind, a.detail"
                        + " FROM act a JOIN child c ON c.nr = a.child_nr",
                none -> {},
                row -> new ActionRecord(
                        Codes.id(row, 1),
                        Codes.id(row, 2),
                        Instant.ofEpochMilli(row.getLong(3)),
                        row.getInt(4),
                        new ActionText(row.getString(5), row.getString(6)).action())));
        return new RecordSet(
                children, drills, answers, actions, Set.copyOf(removals(c).values()));
    }

    private static Map<UUID, Removal> removals(Connection c) throws SQLException {
        List<Removal> all = new ArrayList<>(Database.query(
                c,
                "SELECT id, child_id, kind, answers FROM removed_record",
                none -> {},
                row -> new Removal(
                        Codes.id(row, 1), Codes.id(row, 2), Removal.Kind.values()[row.getInt(3) - 1], row.getInt(4))));
        all.addAll(Database.query(
                c,
                "SELECT id FROM removed_child",
                none -> {},
                row -> new Removal(Codes.id(row, 1), Codes.id(row, 1), Removal.Kind.WHOLE_CHILD, 0)));
        Map<UUID, Removal> byId = new HashMap<>();
        all.forEach(removal -> byId.put(removal.id(), removal));
        return byId;
    }
}
