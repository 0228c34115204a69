// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Answer;
import fourfold.log.InvalidValue;
import fourfold.log.Reason;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
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
            "surface",
            "pace");

    /** Those of them that may be NULL. */
    public static final Set<String> NULLABLE =
            Set.of("operation", "right_number", "typed", "first_key_ms", "whole_ms", "pace");

    /** The column of {@link AnswerValues#checksum}. */
    public static final String CHECKSUM = "checksum";

    /** All columns of the table. */
    static final List<String> ALL = Stream.of(List.of("drill_nr", "position"), COLUMNS, List.of(CHECKSUM))
            .flatMap(List::stream)
            .toList();

    /** The place of typed among the columns, with the position before them. */
    static final int TYPED = 1 + COLUMNS.indexOf("typed");

    /** To be filled by {@link #write}. */
    static final String INSERT = "INSERT INTO answer (" + String.join(", ", ALL) + ") VALUES ("
            + String.join(", ", Collections.nCopies(ALL.size(), "?")) + ")";

    /** To be completed by a condition on the drill d. */
    static final String SELECT = """
            SELECT d.nr, d.id, a.position, a.asked_at, a.zone_offset_min, a.purpose, COALESCE(a.operation, -1),
              a.left_number, COALESCE(a.right_number, -1), COALESCE(a.typed, ''), COALESCE(a.first_key_ms, -1),
              COALESCE(a.whole_ms, -1), a.erasures, a.surface, COALESCE(a.pace, -1), a.checksum
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
     * @throws Refusal if it can't be one, or is not the one that was kept
     */
    Answer read(ResultSet row) throws SQLException {
        return raw(row).answer();
    }

    /** What stands in this row, not yet looked at: any thread may do that. */
    Raw raw(ResultSet row) throws SQLException {
        UUID of = drill(row);
        long sum = row.getLong(16);
        OptionalLong kept = sum == 0 && row.wasNull() ? OptionalLong.empty() : OptionalLong.of(sum);
        return new Raw(child, of, values(row), kept);
    }

    /** A row's values, with the checksum it was kept with. */
    record Raw(UUID child, UUID drill, AnswerValues values, OptionalLong kept) {
        /**
         * The answer it is.
         *
         * @throws Refusal if it can't be one, or is not the one that was kept
         */
        Answer answer() {
            try {
                return values.answer(child, drill, kept);
            } catch (IllegalArgumentException e) {
                throw refusal(values.number(0), drill, e);
            }
        }
    }

    /** The values of a row of {@link #SELECT}. */
    static AnswerValues values(ResultSet row) throws SQLException {
        return new AnswerValues(
                row.getString(10),
                row.getLong(3),
                row.getLong(4),
                row.getLong(5),
                row.getLong(6),
                row.getLong(7),
                row.getLong(8),
                row.getLong(9),
                row.getLong(11),
                row.getLong(12),
                row.getLong(13),
                row.getLong(14),
                row.getLong(15));
    }

    private static Refusal refusal(long position, UUID drill, IllegalArgumentException reason) {
        return reason instanceof InvalidValue value && value.problem().reason() == Reason.ANSWER_CHANGED
                ? new Refusal(value.problem())
                : new Refusal(Reason.ANSWER_UNREADABLE, position, drill, Failure.value(reason));
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

    /** Fills {@link #INSERT}. */
    static void write(PreparedStatement insert, int drill, Answer answer) throws SQLException {
        AnswerValues values = AnswerValues.of(answer);
        insert.setInt(1, drill);
        int numbers = COLUMNS.size();
        for (int i = 0; i < numbers; i++) {
            set(insert, i < TYPED ? i + 2 : i + 3, values.number(i));
        }
        if (values.typed().isEmpty()) {
            insert.setNull(TYPED + 2, Types.VARCHAR);
        } else {
            insert.setString(TYPED + 2, values.typed());
        }
        insert.setInt(numbers + 3, values.checksum(answer.drill()));
    }

    private static void set(PreparedStatement insert, int place, long number) throws SQLException {
        if (number == AnswerValues.NONE) {
            insert.setNull(place, Types.INTEGER);
        } else {
            insert.setLong(place, number);
        }
    }
}
