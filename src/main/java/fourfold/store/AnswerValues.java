// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.InvalidValue;
import fourfold.log.Moment;
import fourfold.log.Reason;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/** The values of an answer's row as they stand in the file, not yet known to mean anything. */
public final class AnswerValues {
    /** In place of a number that is NULL. */
    static final long NONE = -1;

    private final String typed;
    private final long[] numbers;

    /**
     * Values in the order of the columns.
     *
     * @param typed the digits; none for NULL
     * @param numbers the position, then those of {@link AnswerRow#COLUMNS} without typed; {@link #NONE} for NULL
     */
    AnswerValues(String typed, long... numbers) {
        this.typed = typed;
        this.numbers = numbers;
    }

    /**
     * The values of a row from elsewhere: the position and {@link AnswerRow#COLUMNS}. What a row of an earlier program does
     * not have yet is missing at its end.
     *
     * @param from the place of the position in the row
     * @param until where the row's next values begin, or it ends
     * @throws InvalidValue if one is neither a number nor a text where it should be
     */
    public static AnswerValues of(int from, int until, @Nullable Object... row) {
        long[] numbers = new long[AnswerRow.COLUMNS.size()];
        String typed = "";
        for (int i = 0; i <= numbers.length; i++) {
            Object value = from + i < until ? row[from + i] : null;
            if (value instanceof Number number && i != AnswerRow.TYPED) {
                numbers[i < AnswerRow.TYPED ? i : i - 1] = number.longValue();
            } else if (value instanceof String text && i == AnswerRow.TYPED) {
                typed = text;
            } else if (value != null) {
                throw new InvalidValue(Reason.CODE, value);
            } else if (i != AnswerRow.TYPED) {
                numbers[i < AnswerRow.TYPED ? i : i - 1] = NONE;
            }
        }
        return new AnswerValues(typed, numbers);
    }

    /** The values that a row holds for this answer. */
    static AnswerValues of(Answer answer) {
        Prompt prompt = answer.prompt();
        Optional<Question> asked = answer.question();
        return new AnswerValues(
                answer.typed(),
                answer.position(),
                answer.askedAt().toEpochMilli(),
                answer.zoneOffsetMinutes(),
                Codes.of(answer.purpose()),
                asked.isPresent() ? Codes.of(asked.get(), prompt) : NONE,
                asked.isPresent() ? asked.get().left() : prompt.expected(),
                asked.isPresent() ? asked.get().right() : NONE,
                answer.firstKey().isPresent() ? answer.firstKey().get().toMillis() : NONE,
                answer.whole().isPresent() ? answer.whole().get().toMillis() : NONE,
                answer.erasures(),
                Codes.of(answer.surface()),
                answer.pace().isPresent() ? Codes.of(answer.pace().get()) : NONE);
    }

    /** The row of a drill with this number: {@link AnswerRow#ALL}. */
    @Nullable
    Object[] row(int drill, long checksum) {
        @Nullable Object[] row = new Object[AnswerRow.ALL.size()];
        row[0] = drill;
        for (int i = 0; i < numbers.length; i++) {
            row[i < AnswerRow.TYPED ? i + 1 : i + 2] = numbers[i] == NONE ? null : (Object) numbers[i];
        }
        row[AnswerRow.TYPED + 1] = typed.isEmpty() ? null : typed;
        row[row.length - 1] = checksum;
        return row;
    }

    String typed() {
        return typed;
    }

    /** A number, counted from 0 for the position; {@link #NONE} for NULL. */
    long number(int place) {
        return numbers[place];
    }

    /**
     * The answer that these values are.
     *
     * @param kept the checksum that the row holds; empty in a row that an earlier program kept
     * @throws InvalidValue if they can be no answer, or are not those that were kept
     */
    public Answer answer(UUID child, UUID drill, OptionalLong kept) {
        if (kept.isPresent() && kept.getAsLong() != checksum(drill)) {
            throw new InvalidValue(Reason.ANSWER_CHANGED, number(0), drill);
        }
        return new Answer(
                new Answer.Place(child, drill, small(0)),
                new Moment(Instant.ofEpochMilli(number(1)), small(2)),
                Codes.purpose(small(3)),
                Codes.prompt(
                        number(4) == NONE ? Codes.NO_OPERATION : small(4), small(5), number(6) == NONE ? 0 : small(6)),
                new Answer.Typing(typed, new Answer.Times(time(7), time(8), pace()), small(9)),
                Codes.surface(small(10)));
    }

    /**
     * A sum by which a row shows that nothing in it has become something else: CRC-32C (RFC 3720, appendix B.4), as a
     * signed number of 32 bits, of these bytes: the 16 of the drill's id; then position, asked_at, zone_offset_min, purpose,
     * operation, left_number, right_number, first_key_ms, whole_ms, erasures, surface and pace, each as a signed number of
     * 64 bits, the highest byte first, −1 for NULL; then typed in UTF-8, nothing for NULL. The drill's number is left out:
     * it is another one in each file.
     */
    int checksum(UUID drill) {
        byte[] digits = typed.getBytes(StandardCharsets.UTF_8);
        byte[] bytes = new byte[(2 + numbers.length) * Long.BYTES + digits.length];
        int end = put(drill.getMostSignificantBits(), bytes, 0);
        end = put(drill.getLeastSignificantBits(), bytes, end);
        for (long number : numbers) {
            end = put(number, bytes, end);
        }
        System.arraycopy(digits, 0, bytes, end, digits.length);
        CRC32C sum = new CRC32C();
        sum.update(bytes, 0, bytes.length);
        return (int) sum.getValue();
    }

    /** By hand, as years of answers are read before any buffer's code is compiled. */
    private static int put(long number, byte[] bytes, int at) {
        for (int i = 0; i < Long.BYTES; i++) {
            bytes[at + i] = (byte) (number >>> (8 * (Long.BYTES - 1 - i)));
        }
        return at + Long.BYTES;
    }

    private Optional<Duration> time(int place) {
        return number(place) == NONE ? Optional.empty() : Optional.of(Duration.ofMillis(number(place)));
    }

    private Optional<Answer.Pace> pace() {
        return number(11) == NONE ? Optional.empty() : Optional.of(Codes.pace(small(11)));
    }

    /** A number that would otherwise be cut off without a word. */
    private int small(int place) {
        long number = number(place);
        if (number != (int) number) {
            throw new InvalidValue(Reason.CODE, number);
        }
        return (int) number;
    }
}
