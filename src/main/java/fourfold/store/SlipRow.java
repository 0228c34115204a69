package fourfold.store;

import fourfold.facts.Answer;
import fourfold.facts.Moment;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.CRC32C;

/**
 * One answer as a slip holds it: everything its row in the file will say, and a check sum (CRC-32C, RFC 3720, appendix
 * B.4) by which a row that was not written to its end is told from one that was.
 */
final class SlipRow {
    /** The size of a row in bytes: what a disk writes in one go, so that a new row never harms the one before. */
    static final int LENGTH = 512;

    /** The latest time the file can hold: a row that the file would refuse must not come onto a slip. */
    private static final long LATEST = 99_999_999_999_999L;

    private static final int SUM_AT = LENGTH - Integer.BYTES;

    private SlipRow() {}

    /** Whether the file can hold the answer. */
    static boolean fits(Answer answer) {
        long millis = answer.askedAt().toEpochMilli();
        return millis >= 0 && millis <= LATEST;
    }

    /** The row of an answer whose times are whole milliseconds, at most {@link Answers#LONGEST}. */
    static ByteBuffer of(Answer answer) {
        ByteBuffer row = ByteBuffer.allocate(LENGTH);
        put(row, answer.child());
        put(row, answer.drill());
        row.putLong(answer.askedAt().toEpochMilli());
        row.putInt(answer.position()).putInt(answer.zoneOffsetMinutes()).putInt(answer.erasures());
        row.putInt(time(answer.firstKey())).putInt(time(answer.whole()));
        row.put((byte) Codes.of(answer.purpose())).put((byte) Codes.of(answer.surface()));
        Prompt prompt = answer.prompt();
        Optional<Question> asked = answer.question();
        row.put((byte)
                asked.map(q -> Codes.of(q, prompt)).orElse(Codes.NO_OPERATION).intValue());
        row.put((byte) asked.map(Question::left).orElse(prompt.expected()).intValue());
        row.put((byte) asked.map(Question::right).orElse(0).intValue());
        byte[] typed = answer.typed().getBytes(StandardCharsets.US_ASCII);
        row.put((byte) typed.length).put(typed);
        row.putInt(SUM_AT, sum(row));
        return row.rewind();
    }

    /** The answer in a row; empty if the row was never written, or not to its end. */
    static Optional<Answer> read(ByteBuffer row) {
        if (row.remaining() < LENGTH || row.getInt(row.position() + SUM_AT) != sum(row.slice())) {
            return Optional.empty();
        }
        UUID child = id(row);
        UUID drill = id(row);
        Instant askedAt = Instant.ofEpochMilli(row.getLong());
        int position = row.getInt();
        int zone = row.getInt();
        int erasures = row.getInt();
        Optional<Duration> firstKey = time(row.getInt());
        Optional<Duration> whole = time(row.getInt());
        int purpose = row.get();
        int surface = row.get();
        Prompt prompt = Codes.prompt(row.get(), row.get(), row.get());
        byte[] typed = new byte[row.get()];
        row.get(typed);
        return Optional.of(new Answer(
                new Answer.Place(child, drill, position),
                new Moment(askedAt, zone),
                Codes.purpose(purpose),
                prompt,
                new Answer.Typing(
                        new String(typed, StandardCharsets.US_ASCII), new Answer.Times(firstKey, whole), erasures),
                Codes.surface(surface)));
    }

    private static int sum(ByteBuffer row) {
        CRC32C sum = new CRC32C();
        sum.update(row.duplicate().position(0).limit(SUM_AT));
        return (int) sum.getValue();
    }

    private static void put(ByteBuffer row, UUID id) {
        row.putLong(id.getMostSignificantBits()).putLong(id.getLeastSignificantBits());
    }

    private static UUID id(ByteBuffer row) {
        return new UUID(row.getLong(), row.getLong());
    }

    /** Milliseconds and one more; 0 for none. */
    private static int time(Optional<Duration> time) {
        return time.map(t -> (int) t.toMillis() + 1).orElse(0);
    }

    private static Optional<Duration> time(int millisAndOne) {
        return millisAndOne == 0 ? Optional.empty() : Optional.of(Duration.ofMillis(millisAndOne - 1));
    }
}
