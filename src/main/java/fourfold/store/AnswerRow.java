package fourfold.store;

import fourfold.facts.Answer;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.stream.IntStream;

/**
 * Reads answers. A row's small numbers are packed into four large ones by the database and taken apart here: each value
 * asked of the driver costs about as much as the database needs for a whole row, and a child's log of years has to be
 * read at every start.
 *
 * <p>From the highest bits to the lowest:
 *
 * <ul>
 *   <li>when: time asked (47 bits), zone + 2048 (12), surface (2)
 *   <li>what: position (14), purpose (3), operation (2), left (7), right (4), length typed (3), number typed (14)
 *   <li>how long: first key + 1 (31), whole + 1 (32); 0 where there is none
 *   <li>rest: erasures (31), number of the drill's row (32)
 * </ul>
 */
final class AnswerRow {
    /** To be completed by a condition on the drill d. */
    static final String SELECT = """
            SELECT d.id,
              (a.asked_at * 4096 + (a.zone_offset_min + 2048)) * 4 + a.surface,
              (((((CAST(a.position AS BIGINT) * 8 + a.purpose) * 4 + COALESCE(a.operation, 0)) * 128 + a.left_number)
                * 16 + COALESCE(a.right_number, 0)) * 8 + COALESCE(LENGTH(a.typed), 0)) * 16384
                + COALESCE(CAST(a.typed AS INTEGER), 0),
              COALESCE(a.first_key_ms + 1, 0) * 4294967296 + COALESCE(a.whole_ms + 1, 0),
              a.erasures * 4294967296 + d.nr
            FROM drill d JOIN answer a ON a.drill_nr = d.nr
            """;

    /** How many numbers stand for one answer. */
    static final int NUMBERS_IN_A_ROW = 4;

    private static final String[] NOUGHTS = {"", "0", "00", "000", "0000"};

    private static final String[] NUMBERS =
            IntStream.rangeClosed(0, 100).mapToObj(Integer::toString).toArray(String[]::new);

    private static final int TIMES = 8192;
    private static final AtomicReferenceArray<Optional<Duration>> MADE = new AtomicReferenceArray<>(TIMES);

    private AnswerRow() {}

    /** The drill's id. */
    static UUID drill(ResultSet row) throws SQLException {
        return UUID.fromString(row.getString(1));
    }

    /** The number of the drill's row. */
    static int drillNumber(long rest) {
        return (int) rest;
    }

    /** The four numbers of this row, put into {@code into} from {@code at} on. */
    static void numbers(ResultSet row, long[] into, int at) throws SQLException {
        for (int i = 0; i < NUMBERS_IN_A_ROW; i++) {
            into[at + i] = row.getLong(2 + i);
        }
    }

    /** The answer in this row. */
    static Answer read(ResultSet row, UUID child, UUID drill) throws SQLException {
        long[] numbers = new long[NUMBERS_IN_A_ROW];
        numbers(row, numbers, 0);
        return answer(child, drill, numbers, 0);
    }

    /**
     * The answer that four numbers from {@code at} on stand for.
     *
     * @throws Refusal if they stand for none
     */
    static Answer answer(UUID child, UUID drill, long[] numbers, int at) {
        long when = numbers[at];
        long what = numbers[at + 1];
        long howLong = numbers[at + 2];
        int position = (int) (what >> 33);
        try {
            return new Answer(
                    child,
                    drill,
                    position,
                    Instant.ofEpochMilli(when >> 14),
                    bits(when, 2, 12) - 2048,
                    Codes.purpose(bits(what, 30, 3)),
                    Codes.prompt(bits(what, 28, 2), bits(what, 21, 7), bits(what, 17, 4)),
                    typed(bits(what, 0, 17)),
                    time((int) (howLong >> 32)),
                    time((int) howLong),
                    (int) (numbers[at + 3] >> 32),
                    Codes.surface(bits(when, 0, 2)));
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            throw new Refusal("position " + position + " of the drill " + drill + " can't be read: " + e.getMessage());
        }
    }

    private static int bits(long packed, int from, int count) {
        return (int) (packed >> from) & ((1 << count) - 1);
    }

    /** The digits typed, with the noughts they began with. */
    private static String typed(int packed) {
        int length = packed >> 14;
        if (length == 0) {
            return "";
        }
        int number = packed & 16383;
        String digits = number < NUMBERS.length ? NUMBERS[number] : Integer.toString(number);
        return digits.length() == length ? digits : NOUGHTS[length - digits.length()] + digits;
    }

    /** Times come again and again in a long log, so those of a few seconds are made once. */
    private static Optional<Duration> time(int millisAndOne) {
        if (millisAndOne == 0) {
            return Optional.empty();
        }
        if (millisAndOne < 0 || millisAndOne >= TIMES) {
            return Optional.of(Duration.ofMillis(millisAndOne - 1));
        }
        Optional<Duration> made = MADE.get(millisAndOne);
        if (made == null) {
            made = Optional.of(Duration.ofMillis(millisAndOne - 1));
            MADE.set(millisAndOne, made);
        }
        return made;
    }
}
