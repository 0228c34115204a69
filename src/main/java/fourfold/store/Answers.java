package fourfold.store;

import fourfold.facts.Answer;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** The answers: appended, and read in the order in which they were given. */
final class Answers {
    /** The longest time a row can hold, in milliseconds: 24 days. */
    private static final long LONGEST_MS = Integer.MAX_VALUE;

    private static final int NONE = -1;

    /** Missing values come as numbers and empty text: asking the driver for NULL costs a call for each. */
    private static final String SELECT = """
            SELECT a.position, a.asked_at, a.zone_offset_min, a.purpose, COALESCE(a.operation, 0), a.left_number,
              COALESCE(a.right_number, 0), COALESCE(a.typed, ''), COALESCE(a.first_key_ms, -1),
              COALESCE(a.whole_ms, -1), a.erasures, a.surface, d.nr, d.id
            FROM drill d JOIN answer a ON a.drill_nr = d.nr
            """;

    private static final String INSERT = """
            INSERT INTO answer (drill_nr, position, asked_at, zone_offset_min, purpose, operation, left_number,
              right_number, typed, first_key_ms, whole_ms, erasures, surface)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private Answers() {}

    /** Hands over each of the child's answers: by the drill's start, its id, and the position in it. */
    static void read(Connection connection, UUID child, Consumer<Answer> each) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(SELECT + "WHERE d.child_nr = (SELECT nr FROM child WHERE id = ?)"
                        + " ORDER BY d.started_at, d.id, a.position")) {
            statement.setString(1, child.toString());
            try (ResultSet rows = statement.executeQuery()) {
                int number = NONE;
                UUID drill = child;
                while (rows.next()) {
                    if (rows.getInt(13) != number) {
                        number = rows.getInt(13);
                        drill = UUID.fromString(rows.getString(14));
                    }
                    each.accept(read(rows, child, drill));
                }
            }
        }
    }

    /** Keeps answers of drills that are known; one that is kept already in the same words is passed over. */
    static void keep(Connection connection, List<Answer> answers) throws SQLException {
        int first = answers.stream().mapToInt(Answer::position).min().orElse(0);
        int last = answers.stream().mapToInt(Answer::position).max().orElse(0);
        Map<UUID, Drill> drills = new HashMap<>();
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            for (Answer answer : answers) {
                Drill drill = drills.get(answer.drill());
                if (drill == null) {
                    drill = drill(connection, answer, first, last);
                    drills.put(answer.drill(), drill);
                }
                Answer kept = asKept(answer);
                if (drill.isNew(kept)) {
                    fill(insert, drill.number, kept);
                    insert.executeUpdate();
                }
            }
        }
    }

    /** A drill that answers are being added to, with those it holds at the positions in question. */
    private record Drill(int number, UUID child, Map<Integer, Answer> held) {
        boolean isNew(Answer answer) {
            if (!child.equals(answer.child())) {
                throw new Refusal("the drill " + answer.drill() + " is not a drill of the child " + answer.child()
                        + "; nothing was changed");
            }
            Answer before = held.putIfAbsent(answer.position(), answer);
            if (before != null && !before.equals(answer)) {
                throw new Refusal("another answer is kept at position " + answer.position() + " of the drill "
                        + answer.drill() + "; nothing was changed");
            }
            return before == null;
        }
    }

    private static Drill drill(Connection connection, Answer answer, int first, int last) throws SQLException {
        Sittings.Numbered found = Sittings.find(connection, answer.drill())
                .orElseThrow(() ->
                        new Refusal("there is no drill with the id " + answer.drill() + "; begin the drill first"));
        UUID child = found.sitting().child();
        Map<Integer, Answer> held = new HashMap<>();
        for (Answer before : Database.query(
                connection,
                SELECT + "WHERE d.nr = ? AND a.position BETWEEN ? AND ?",
                values -> {
                    values.setInt(1, found.number());
                    values.setInt(2, first);
                    values.setInt(3, last);
                },
                row -> read(row, child, answer.drill()))) {
            held.put(before.position(), before);
        }
        return new Drill(found.number(), child, held);
    }

    private static void fill(PreparedStatement insert, int drill, Answer answer) throws SQLException {
        Prompt prompt = answer.prompt();
        insert.setInt(1, drill);
        insert.setInt(2, answer.position());
        insert.setLong(3, answer.askedAt().toEpochMilli());
        insert.setInt(4, answer.zoneOffsetMinutes());
        insert.setInt(5, Codes.of(answer.purpose()));
        if (prompt instanceof Question question) {
            insert.setInt(6, Codes.of(question.operation()));
            insert.setInt(7, question.left());
            insert.setInt(8, question.right());
        } else {
            insert.setNull(6, Types.INTEGER);
            insert.setInt(7, prompt.expected());
            insert.setNull(8, Types.INTEGER);
        }
        if (answer.isMissing()) {
            insert.setNull(9, Types.VARCHAR);
        } else {
            insert.setString(9, answer.typed());
        }
        setMillis(insert, 10, answer.firstKey());
        setMillis(insert, 11, answer.whole());
        insert.setInt(12, answer.erasures());
        insert.setInt(13, Codes.of(answer.surface()));
    }

    private static void setMillis(PreparedStatement insert, int place, Optional<Duration> time) throws SQLException {
        if (time.isEmpty()) {
            insert.setNull(place, Types.INTEGER);
        } else {
            insert.setInt(place, (int) time.get().toMillis());
        }
    }

    private static Answer read(ResultSet row, UUID child, UUID drill) throws SQLException {
        int position = row.getInt(1);
        try {
            return new Answer(
                    child,
                    drill,
                    position,
                    Instant.ofEpochMilli(row.getLong(2)),
                    row.getInt(3),
                    Codes.purpose(row.getInt(4)),
                    Codes.prompt(row.getInt(5), row.getInt(6), row.getInt(7)),
                    row.getString(8),
                    millis(row.getInt(9)),
                    millis(row.getInt(10)),
                    row.getInt(11),
                    Codes.surface(row.getInt(12)));
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            throw new Refusal("position " + position + " of the drill " + drill + " can't be read: " + e.getMessage());
        }
    }

    private static Optional<Duration> millis(int millis) {
        return millis == NONE ? Optional.empty() : Optional.of(Duration.ofMillis(millis));
    }

    /** The answer as it will be read back: times to the millisecond. */
    private static Answer asKept(Answer answer) {
        return new Answer(
                answer.child(),
                answer.drill(),
                answer.position(),
                answer.askedAt().truncatedTo(ChronoUnit.MILLIS),
                answer.zoneOffsetMinutes(),
                answer.purpose(),
                answer.prompt(),
                answer.typed(),
                answer.firstKey().map(Answers::asKept),
                answer.whole().map(Answers::asKept),
                answer.erasures(),
                answer.surface());
    }

    private static Duration asKept(Duration time) {
        if (time.compareTo(Duration.ofMillis(LONGEST_MS)) > 0) {
            throw new Refusal("a response time of " + time + " is longer than a row can hold");
        }
        return time.truncatedTo(ChronoUnit.MILLIS);
    }
}
