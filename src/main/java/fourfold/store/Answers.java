// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Answer;
import fourfold.log.Reason;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

/** The answers: appended, and read in the order in which they were given. */
public final class Answers {
    /** The longest time a row can hold: eleven and a half days. */
    private static final Duration LONGEST = Duration.ofSeconds(1_000_000);

    private Answers() {}

    /**
     * Hands over each of the child's answers: by the drill's start, its id, and the position in it.
     *
     * @throws Refusal if one can't be made out, or is not as it was kept
     */
    public static void read(Connection connection, UUID child, Consumer<Answer> each) throws SQLException {
        read(connection, child, each, refusal -> {
            throw refusal;
        });
    }

    /** The same, and goes on behind what can't be made out. */
    public static void read(Connection connection, UUID child, Consumer<Answer> each, Consumer<Refusal> lost)
            throws SQLException {
        List<UUID> same = SameChildren.in(connection).rows(child);
        // With one row the database finds the drills already in order; with several it has to sort.
        String condition = "WHERE d.child_nr" + (same.size() == 1 ? " = " : " IN ") + "(SELECT nr FROM child WHERE id"
                + SameChildren.oneOf(same) + ") ORDER BY d.started_at, d.id, a.position";
        try (PreparedStatement statement = connection.prepareStatement(AnswerRow.SELECT + condition)) {
            SameChildren.filling(same).into(statement);
            try (ResultSet rows = statement.executeQuery()) {
                new ReadAhead(rows, new AnswerRow(child)).handOver(each, lost);
            }
        }
    }

    /** The checksums of a drill's answers by their positions, where they have one. */
    public static Map<Integer, Integer> checksums(Connection connection, UUID drill) throws SQLException {
        Map<Integer, Integer> sums = new HashMap<>();
        Database.query(
                        connection,
                        AnswerRow.SELECT + "WHERE d.id = ? AND a.checksum IS NOT NULL",
                        values -> values.setString(1, drill.toString()),
                        row -> AnswerRow.values(row))
                .forEach(values -> sums.put((int) values.number(0), values.checksum(drill)));
        return sums;
    }

    /** Keeps answers of drills that are known; one that is kept already in the same words is passed over. */
    static void keep(Connection connection, List<Answer> answers) throws SQLException {
        int first = answers.stream().mapToInt(Answer::position).min().orElse(0);
        int last = answers.stream().mapToInt(Answer::position).max().orElse(0);
        Map<UUID, Drill> drills = new HashMap<>();
        try (PreparedStatement insert = connection.prepareStatement(AnswerRow.INSERT)) {
            for (Answer answer : answers) {
                Drill drill = drills.get(answer.drill());
                if (drill == null) {
                    drill = drill(connection, answer, first, last);
                    drills.put(answer.drill(), drill);
                }
                Answer kept = asKept(answer);
                if (drill.isNew(kept)) {
                    AnswerRow.write(insert, drill.number, kept);
                    insert.executeUpdate();
                }
            }
        }
    }

    /** A drill that answers are being added to, with those it holds at the positions in question. */
    private record Drill(int number, UUID child, Map<Integer, Answer> held) {
        boolean isNew(Answer answer) {
            if (!child.equals(answer.child())) {
                throw new Refusal(Reason.ANSWER_OF_ANOTHER_CHILD, answer.drill(), answer.child());
            }
            Answer before = held.putIfAbsent(answer.position(), answer);
            if (before != null && !before.equals(answer)) {
                throw new Refusal(Reason.ANSWER_DIFFERS, answer.position(), answer.drill());
            }
            return before == null;
        }
    }

    private static Drill drill(Connection connection, Answer answer, int first, int last) throws SQLException {
        DrillSessions.Numbered found = DrillSessions.find(connection, answer.drill())
                .orElseThrow(() -> new Refusal(Reason.DRILL_UNKNOWN, answer.drill()));
        UUID child = found.session().child();
        Map<Integer, Answer> held = new HashMap<>();
        for (Answer before : Database.query(
                connection,
                AnswerRow.SELECT + "WHERE d.nr = ? AND a.position BETWEEN ? AND ?",
                values -> {
                    values.setInt(1, found.number());
                    values.setInt(2, first);
                    values.setInt(3, last);
                },
                new AnswerRow(child)::read)) {
            held.put(before.position(), before);
        }
        return new Drill(found.number(), child, held);
    }

    /**
     * The answer as it will be read back: times to the millisecond.
     *
     * @throws Refusal if a time is longer than a row can hold
     */
    static Answer asKept(Answer answer) {
        return answer.askedAt(answer.askedAt().truncatedTo(ChronoUnit.MILLIS))
                .with(new Answer.Typing(
                        answer.typed(),
                        new Answer.Times(
                                answer.firstKey().map(Answers::asKept),
                                answer.whole().map(Answers::asKept),
                                answer.pace()),
                        answer.erasures()));
    }

    private static Duration asKept(Duration time) {
        if (time.compareTo(LONGEST) > 0) {
            throw new Refusal(Reason.TIME_TOO_LONG, time);
        }
        return time.truncatedTo(ChronoUnit.MILLIS);
    }
}
