// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what can be kept of rows that were saved from a damaged file, in a fresh file that nobody else knows yet: all in
 * one write, each row once, and a refused row costs only itself.
 */
public final class FittingRows implements AutoCloseable {
    /** What became of a row. */
    public enum Fate {
        /** It is in the file. */
        KEPT,
        /** Another is there in its place, what it belongs to is not there, or it breaks a rule of the tables. */
        REFUSED
    }

    /** How often names that clash are sought, one child each time, before all later names are given up. */
    private static final int ROUNDS = 3;

    /** Finds a row that is the same in every column. */
    private static final String SAME =
            "SELECT 1 FROM answer WHERE " + String.join(" IS ? AND ", AnswerRow.ALL) + " IS ?";

    private final Connection connection;
    private final PreparedStatement insertDrill;
    private final ManyRows insertAnswers;
    private final PreparedStatement insertAction;
    private final Map<UUID, Integer> children = new HashMap<>();
    private final Map<UUID, Integer> drills = new HashMap<>();
    /** Counted by the thread that reads and by the one that adds. */
    private final AtomicInteger kept = new AtomicInteger();

    private final AtomicInteger refused = new AtomicInteger();

    private FittingRows(Connection connection) throws SQLException {
        this.connection = connection;
        // A transaction that the driver did not begin itself it tries to begin once more with every row.
        connection.setAutoCommit(false);
        insertDrill = connection.prepareStatement(
                "INSERT OR IGNORE INTO drill (id, child_nr, started_at, zone_offset_min, planned_s, seed, nr)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)");
        insertAnswers = new ManyRows(connection, "answer", AnswerRow.ALL, this::refused);
        insertAction = connection.prepareStatement(
                "INSERT OR IGNORE INTO act (id, child_nr, made_at, zone_offset_min, kind, detail)"
                        + " VALUES (?, ?, ?, ?, ?, ?)");
    }

    /** Begins to fill a file of ours that has no rows. */
    public static FittingRows in(Path fresh) throws SQLException {
        Connection connection = Connections.fresh(fresh);
        try {
            return new FittingRows(connection);
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** Keeps a child. That two have one name is settled with the actions, which may say that the two are one. */
    public Fate keep(Child child) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT OR IGNORE INTO child (id, name, created_at) VALUES (?, ?, ?)")) {
            insert.setString(1, child.id().toString());
            insert.setString(2, child.name());
            insert.setLong(3, child.since().toEpochMilli());
            if (insert.executeUpdate() == 0) {
                return Fate.REFUSED;
            }
        }
        children.put(child.id(), Children.numberOf(connection, child.id()));
        return Fate.KEPT;
    }

    /** Keeps a drill of a child that was kept. */
    public Fate keep(DrillSession session) throws SQLException {
        Integer child = children.get(session.child());
        if (child == null) {
            return Fate.REFUSED;
        }
        int number = drills.size() + 1;
        insertDrill.setString(1, session.id().toString());
        insertDrill.setInt(2, child);
        insertDrill.setLong(3, session.startedAt().toEpochMilli());
        insertDrill.setInt(4, session.zoneOffsetMinutes());
        insertDrill.setLong(5, session.planned().toSeconds());
        insertDrill.setLong(6, session.seed());
        insertDrill.setInt(7, number);
        if (insertDrill.executeUpdate() == 0) {
            return Fate.REFUSED;
        }
        drills.put(session.id(), number);
        return Fate.KEPT;
    }

    /**
     * Keeps an answer of a drill that was kept, if the values make one and are those that were kept.
     *
     * @param checksum the one that the row holds; empty in a row of an earlier program
     */
    public void keep(UUID drill, AnswerValues values, OptionalLong checksum) throws SQLException {
        Integer number = drills.get(drill);
        if (number == null) {
            refuse();
            return;
        }
        AnswerValues known = values;
        try {
            // Whose answer it is makes no difference to whether it is one.
            Answer answer = values.answer(drill, drill, checksum);
            if (checksum.isEmpty()) {
                known = AnswerValues.of(answer);
            }
        } catch (IllegalArgumentException e) {
            refuse();
            return;
        }
        kept.incrementAndGet();
        insertAnswers.add(known.row(number, checksum.orElseGet(() -> values.checksum(drill))));
    }

    /** An answer can't be made out. */
    public void refuse() {
        refused.incrementAndGet();
    }

    /** The rules of the tables refuse an answer: there is one in its place, or they know better than we. */
    private void refused(SQLException reason, @Nullable Object... row) throws SQLException {
        kept.decrementAndGet();
        if (Database.query(connection, SAME, values -> fill(values, row), one -> one.getInt(1))
                .isEmpty()) {
            refused.incrementAndGet();
        }
    }

    private static void fill(PreparedStatement statement, @Nullable Object... row) throws SQLException {
        for (int i = 0; i < row.length; i++) {
            statement.setObject(i + 1, row[i]);
        }
    }

    /** All answers that were to be kept are there, or refused. */
    public void endAnswers() throws SQLException {
        insertAnswers.end();
    }

    /** How many answers were kept, each once. */
    public int keptAnswers() {
        return kept.get();
    }

    /** How many answers were refused; not those that are there in the same words. */
    public int refusedAnswers() {
        return refused.get();
    }

    /**
     * Keeps the actions. A child whose later name another child has loses the choices of its names; if two were added
     * under one name, the second gets another by a choice of its own.
     *
     * @param otherName a name for the child with this number
     * @return how many were refused
     */
    public int keepActions(Set<ActionRecord> actions, LongFunction<String> otherName) throws SQLException {
        Set<UUID> unnamed = new HashSet<>();
        Connections.run(connection, "SAVEPOINT actions");
        int refused = insert(actions, unnamed);
        List<Child> clashes = clashes();
        for (int round = 1; round <= ROUNDS && !clashes.isEmpty(); round++) {
            unnamed.addAll(round < ROUNDS ? Set.of(clashes.get(0).id()) : children.keySet());
            Connections.run(connection, "ROLLBACK TO actions");
            refused = insert(actions, unnamed);
            clashes = clashes();
        }
        Connections.run(connection, "RELEASE actions");
        for (Child child : clashes) {
            giveName(child, otherName.apply(children.getOrDefault(child.id(), 0)));
        }
        return refused;
    }

    /** All of them but choices of these children's names; gives how many were refused. */
    private int insert(Set<ActionRecord> actions, Set<UUID> unnamed) throws SQLException {
        int refused = 0;
        for (ActionRecord action : actions) {
            boolean name = action.action() instanceof ParentAction.Choose choose
                    && choose.setting().equals(Children.NAME);
            if ((name && unnamed.contains(action.child())) || !isKept(action)) {
                refused++;
            }
        }
        return refused;
    }

    private boolean isKept(ActionRecord action) throws SQLException {
        Integer child = children.get(action.child());
        if (child == null) {
            return false;
        }
        ActionText text;
        try {
            Actions.checkChoice(action.action());
            text = ActionText.of(action.action());
        } catch (Refusal e) {
            return false;
        }
        insertAction.setString(1, action.id().toString());
        insertAction.setInt(2, child);
        insertAction.setLong(3, action.at().toEpochMilli());
        insertAction.setInt(4, action.zoneOffsetMinutes());
        insertAction.setString(5, text.kind());
        insertAction.setString(6, text.detail());
        return insertAction.executeUpdate() > 0;
    }

    /** Of children who have one name now, all but the first. */
    private List<Child> clashes() throws SQLException {
        Set<String> names = new HashSet<>();
        List<Child> clashes = new ArrayList<>();
        for (Children.Known known : Children.all(connection)) {
            if (!names.add(ChildName.folded(known.child().name()))) {
                clashes.add(known.child());
            }
        }
        return clashes;
    }

    private void giveName(Child child, String name) throws SQLException {
        UUID id = UUID.nameUUIDFromBytes((child.id() + " is " + name).getBytes(StandardCharsets.UTF_8));
        isKept(new ActionRecord(id, child.id(), child.since(), 0, new ParentAction.Choose(Children.NAME, name)));
    }

    /** All that was kept is in the file from now on. */
    public void end() throws SQLException {
        connection.commit();
    }

    @Override
    public void close() throws SQLException {
        try {
            insertAnswers.close();
        } finally {
            connection.close();
        }
    }
}
