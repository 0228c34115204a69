// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.facts.Prompt;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.RecordsFailure.Task;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.CRC32C;

/**
 * Answers that a Fourfold of November 2026 left on slips beside the file, called {@code fourfold.db-slip-…}: a head and
 * 31 rows of 512 bytes, each with a check sum (CRC-32C, RFC 3720, appendix B.4) in its last four. Whoever still practises
 * with that program holds a lock on its slip.
 */
public final class EarlierSlips {
    private static final String ENDING = "-slip-";
    private static final byte[] HEAD = "Fourfold slip 1\n".getBytes(StandardCharsets.US_ASCII);
    private static final int ROW = 512;

    /** No slip of ours comes near it. */
    private static final long LARGEST = 1 << 20;

    private static final int SUM_AT = ROW - Integer.BYTES;

    private EarlierSlips() {}

    /** The slips beside a file. */
    public static List<Path> beside(Path file) {
        Path beginning = Journal.beside(file, ENDING);
        try (Stream<Path> files = Files.list(beginning.resolveSibling(""))) {
            return files.filter(
                            f -> String.valueOf(f.getFileName()).startsWith(String.valueOf(beginning.getFileName())))
                    .toList();
        } catch (IOException e) {
            // What can't be read now can be read at a later start.
            return List.of();
        }
    }

    /** Copies the slips beside a file to where another file's would be. */
    public static void copy(Path file, Path other) throws IOException {
        for (Path slip : beside(file)) {
            if (Files.size(slip) > LARGEST) {
                continue;
            }
            String drill = String.valueOf(slip.getFileName()).replaceFirst("^.*" + ENDING, "");
            Files.copy(slip, Journal.beside(other, ENDING + drill));
        }
    }

    /**
     * Puts the answers of slips into the file if it knows their drills, and takes the slips away. What can't be put in now
     * stays for the next start: a file that can be read is not to be kept shut for it. Whoever was removed for good does
     * not come back by a slip.
     */
    static void takeIn(Database database, Path file) {
        for (Path slip : beside(file)) {
            try (FileChannel channel = FileChannel.open(slip, StandardOpenOption.READ, StandardOpenOption.WRITE);
                    FileLock lock = channel.tryLock()) {
                if (lock != null && (channel.size() == 0 || isTakenIn(database, answers(channel)))) {
                    Files.delete(slip);
                }
            } catch (IOException | RuntimeException e) {
                // Another program was first, or it is no slip: it stays as it is.
            }
        }
    }

    private static boolean isTakenIn(Database database, List<Answer> answers) {
        boolean removed = database.read(Task.READ_ANSWERS, c -> areOfRemovedChildren(c, answers));
        if (!removed && database.read(Task.READ_ANSWERS, c -> areKnown(c, answers))) {
            database.write(Task.KEEP_ANSWERS, connection -> {
                Answers.keep(connection, answers);
                return answers;
            });
            return true;
        }
        return removed;
    }

    private static boolean areKnown(Connection connection, List<Answer> answers) throws SQLException {
        for (Answer answer : answers) {
            if (DrillSessions.find(connection, answer.drill()).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    private static boolean areOfRemovedChildren(Connection connection, List<Answer> answers) throws SQLException {
        List<String> removed = Database.query(
                connection,
                "SELECT id FROM removed_child UNION SELECT id FROM removed_record WHERE kind = 1",
                none -> {},
                row -> row.getString(1));
        return !answers.isEmpty()
                && answers.stream().allMatch(a -> removed.contains(a.child().toString()));
    }

    private static List<Answer> answers(FileChannel channel) throws IOException {
        ByteBuffer all = ByteBuffer.allocate((int) Math.min(channel.size(), 1 << 20));
        while (all.hasRemaining() && channel.read(all) >= 0) {
            // A channel may give less than was asked for.
        }
        all.flip();
        if (all.remaining() < HEAD.length || !all.slice(0, HEAD.length).equals(ByteBuffer.wrap(HEAD))) {
            throw new IOException("this is no slip");
        }
        List<Answer> answers = new ArrayList<>();
        for (int at = ROW; at + ROW <= all.limit(); at += ROW) {
            answer(all.slice(at, ROW)).ifPresent(answers::add);
        }
        return answers;
    }

    /** The answer in a row; empty if the row was never written, or not to its end. */
    private static Optional<Answer> answer(ByteBuffer row) {
        CRC32C sum = new CRC32C();
        sum.update(row.slice(0, SUM_AT));
        if (row.getInt(SUM_AT) != (int) sum.getValue()) {
            return Optional.empty();
        }
        UUID child = new UUID(row.getLong(), row.getLong());
        UUID drill = new UUID(row.getLong(), row.getLong());
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

    /** Times were written as milliseconds and one more; 0 is none. */
    private static Optional<Duration> time(int millisAndOne) {
        return millisAndOne == 0 ? Optional.empty() : Optional.of(Duration.ofMillis(millisAndOne - 1));
    }
}
