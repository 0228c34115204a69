package fourfold.store;

import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.InvalidValue;
import fourfold.log.Moment;
import fourfold.log.Reason;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One answer as a row of the table: what writes its columns and what reads them, side by side. */
public final class AnswerRow {
    /** The columns that say what the answer was, beside the drill and the position. */
    public static final List<String> COLUMNS = List.of(
            "asked_at",
            "zone_offset_min",
            "purpose",
            "operation",
            "left_number",
            "right_number",
            "typed",
            "first_key_ms",
            "whole_ms",
            "erasures",
            "surface");

    /** To be filled by {@link #write}. */
    static final String INSERT = "INSERT INTO answer (drill_nr, position, " + String.join(", ", COLUMNS) + ") VALUES ("
            + String.join(", ", Collections.nCopies(2 + COLUMNS.size(), "?")) + ")";

    /** To be completed by a condition on the drill d. Where a time is missing, −1 stands. */
    static final String SELECT = """
            SELECT d.nr, d.id, a.position, a.asked_at, a.zone_offset_min, a.purpose, COALESCE(a.operation, 0),
              a.left_number, COALESCE(a.right_number, 0), COALESCE(a.typed, ''), COALESCE(a.first_key_ms, -1),
              COALESCE(a.whole_ms, -1), a.erasures, a.surface
            FROM drill d JOIN answer a ON a.drill_nr = d.nr
            """;

    private final UUID child;
    private long drillNumber;
    private @Nullable UUID drill;

    /** Reads rows of {@link #SELECT} that belong to this child, best drill by drill. */
    AnswerRow(UUID child) {
        this.child = child;
    }

    /**
     * The answer in this row.
     *
     * @throws Refusal if it can't be one
     */
    Answer read(ResultSet row) throws SQLException {
        UUID of = drill(row);
        try {
            return new Answer(
                    new Answer.Place(child, of, small(row, 3)),
                    new Moment(Instant.ofEpochMilli(row.getLong(4)), small(row, 5)),
                    Codes.purpose(small(row, 6)),
                    Codes.prompt(small(row, 7), small(row, 8), small(row, 9)),
                    new Answer.Typing(
                            row.getString(10),
                            new Answer.Times(millis(row.getLong(11)), millis(row.getLong(12))),
                            small(row, 13)),
                    Codes.surface(small(row, 14)));
        } catch (IllegalArgumentException e) {
            throw new Refusal(Reason.ANSWER_UNREADABLE, row.getLong(3), of, Failure.value(e));
        }
    }

    /** A drill has many answers, and its id is the longest text of a row: it is taken once. */
    private UUID drill(ResultSet row) throws SQLException {
        long number = row.getLong(1);
        if (drill == null || number != drillNumber) {
            drillNumber = number;
            drill = Codes.id(row, 2);
        }
        return drill;
    }

    /** A number that the driver would otherwise cut off without a word. */
    private static int small(ResultSet row, int column) throws SQLException {
        long number = row.getLong(column);
        if (number != (int) number) {
            throw new InvalidValue(Reason.CODE, number);
        }
        return (int) number;
    }

    private static Optional<Duration> millis(long millis) {
        return millis == -1 ? Optional.empty() : Optional.of(Duration.ofMillis(millis));
    }

    /** Fills {@link #INSERT}. */
    static void write(PreparedStatement insert, int drill, Answer answer) throws SQLException {
        Prompt prompt = answer.prompt();
        insert.setInt(1, drill);
        insert.setInt(2, answer.position());
        insert.setLong(3, answer.askedAt().toEpochMilli());
        insert.setInt(4, answer.zoneOffsetMinutes());
        insert.setInt(5, Codes.of(answer.purpose()));
        Optional<Question> asked = answer.question();
        if (asked.isPresent()) {
            insert.setInt(6, Codes.of(asked.get(), prompt));
            insert.setInt(7, asked.get().left());
            insert.setInt(8, asked.get().right());
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
            insert.setLong(place, time.get().toMillis());
        }
    }
}
