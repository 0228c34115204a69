package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure.Task;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;

/** Keeps what can be kept of rows that were saved from a damaged file: in one write, and a refused row costs only itself. */
public final class FittingRows {
    private final List<Object> refused = new ArrayList<>();

    private FittingRows() {}

    private interface Each<T> {
        void keep(T one) throws SQLException;
    }

    /**
     * Keeps them.
     *
     * @return the rows that were refused
     */
    public static List<Object> keep(
            Database database,
            List<Child> children,
            List<DrillSession> sessions,
            List<Answer> answers,
            List<ActionRecord> actions) {
        FittingRows rows = new FittingRows();
        database.write(Task.KEEP_ANSWERS, c -> {
            rows.each(c, children, child -> Children.add(c, child));
            rows.each(c, sessions, session -> DrillSessions.begin(c, session));
            Collection<List<Answer>> drills = answers.stream()
                    .collect(Collectors.groupingBy(Answer::drill, LinkedHashMap::new, Collectors.toList()))
                    .values();
            for (List<Answer> drill : drills) {
                if (!rows.isKept(c, drill, all -> Answers.keep(c, all))) {
                    rows.each(c, drill, answer -> Answers.keep(c, List.of(answer)));
                }
            }
            rows.each(c, actions, action -> Actions.keep(c, action));
            return rows;
        });
        database.checkpointIfPossible();
        return rows.refused;
    }

    private <T> void each(Connection connection, List<T> all, Each<T> keep) throws SQLException {
        for (T one : all) {
            if (!isKept(connection, one, keep)) {
                refused.add(one);
            }
        }
    }

    private <T> boolean isKept(Connection connection, T one, Each<T> keep) throws SQLException {
        Connections.run(connection, "SAVEPOINT one");
        try {
            keep.keep(one);
            return true;
        } catch (SQLException | Refusal e) {
            Connections.run(connection, "ROLLBACK TO one");
            return false;
        } finally {
            Connections.run(connection, "RELEASE one");
        }
    }
}
