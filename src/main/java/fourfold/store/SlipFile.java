package fourfold.store;

import fourfold.facts.Answer;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The file of a slip, beside the family's file: a head and room for some answers, made at its full size so that writing
 * one changes nothing but its own row. Whoever practises holds a lock on it; a slip without one was left behind by a
 * program that was killed, or by a computer that lost its power.
 */
final class SlipFile {
    /** How many answers have room. */
    static final int ROWS = 31;

    private static final String ENDING = "-slip-";
    private static final byte[] HEAD = "Fourfold slip 1\n".getBytes(StandardCharsets.US_ASCII);

    /** Those this program holds: to open one a second time, and close it again, would give its lock away (fcntl(2)). */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path path;
    private final FileChannel channel;

    private SlipFile(Path path, FileChannel channel) {
        this.path = path;
        this.channel = channel;
    }

    /**
     * Makes a slip for a drill and takes its lock.
     *
     * @param store the family's file
     * @throws IOException if that can't be done here; then there is no slip
     */
    static SlipFile make(Path store, UUID drill) throws IOException {
        Path path = store.resolveSibling(store.getFileName() + ENDING + drill);
        if (!Rights.makeFile(path)) {
            throw new IOException("there is a slip of this drill already");
        }
        SlipFile slip = new SlipFile(path, opened(path));
        try {
            if (slip.channel.tryLock() == null) {
                throw new IOException("the slip is in use");
            }
            ByteBuffer all = ByteBuffer.allocate((1 + ROWS) * SlipRow.LENGTH);
            writeAll(slip.channel, all.put(HEAD).rewind(), 0);
            slip.channel.force(true);
            Copy.forceFolder(path);
            return slip;
        } catch (IOException | RuntimeException e) {
            slip.delete();
            throw e;
        }
    }

    private static FileChannel opened(Path path) throws IOException {
        HELD.add(path);
        try {
            return FileChannel.open(path, StandardOpenOption.WRITE);
        } catch (IOException e) {
            HELD.remove(path);
            throw e;
        }
    }

    /** Whether it still has its name: the system would go on writing to a file that nobody will find again. */
    boolean isThere() {
        return Files.exists(path);
    }

    /** Writes an answer into a row; it is on the disk when this returns. */
    void write(int row, Answer answer) throws IOException {
        writeAll(channel, SlipRow.of(answer), (long) (1 + row) * SlipRow.LENGTH);
        channel.force(false);
    }

    /** Gives the lock back and leaves the file for the next program that opens the store. */
    void leave() {
        HELD.remove(path);
        try {
            channel.close();
        } catch (IOException e) {
            // The system gives the lock back at the latest when the program ends.
        }
    }

    /** Gives the lock back and takes the file away. */
    void delete() {
        leave();
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // The next program that opens the store finds nothing new on it and takes it away.
        }
    }

    /** What becomes of a slip that was left behind. */
    interface Taking {
        /** Takes its answers; true if the slip is no longer needed. */
        boolean taken(List<Answer> answers);
    }

    /** Hands over the answers of each slip beside the file that nobody practises with any more. */
    static void leftBeside(Path store, Taking taking) {
        Path folder = store.resolveSibling(".");
        String begins = store.getFileName() + ENDING;
        try (DirectoryStream<Path> slips =
                Files.newDirectoryStream(folder, p -> p.getFileName().toString().startsWith(begins))) {
            for (Path slip : slips) {
                take(store.resolveSibling(slip.getFileName()), taking);
            }
        } catch (IOException | DirectoryIteratorException e) {
            // What can't be read now can be read at a later start.
        }
    }

    private static void take(Path slip, Taking taking) {
        if (HELD.contains(slip)) {
            return;
        }
        try (FileChannel channel = FileChannel.open(slip, StandardOpenOption.READ, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            if (lock != null && (isBarelyBegun(channel) || (isSlip(channel) && taking.taken(answers(channel))))) {
                Files.deleteIfExists(slip);
            }
        } catch (IOException | RuntimeException e) {
            // Another program was first, or it is no slip of this version: it stays as it is.
        }
    }

    /**
     * A file with nothing in it was left by a program that was killed while it made a slip. One that is making it this
     * very moment finds its slip gone and does without.
     */
    private static boolean isBarelyBegun(FileChannel channel) throws IOException {
        return channel.size() == 0;
    }

    /** A file without the head is none of ours. */
    private static boolean isSlip(FileChannel channel) throws IOException {
        ByteBuffer head = ByteBuffer.allocate(HEAD.length);
        channel.read(head, 0);
        return Arrays.equals(head.array(), HEAD);
    }

    private static List<Answer> answers(FileChannel channel) throws IOException {
        List<Answer> answers = new ArrayList<>();
        for (int row = 0; row < ROWS; row++) {
            ByteBuffer bytes = ByteBuffer.allocate(SlipRow.LENGTH);
            channel.read(bytes, (long) (1 + row) * SlipRow.LENGTH);
            SlipRow.read(bytes.flip()).ifPresent(answers::add);
        }
        return answers;
    }

    private static void writeAll(FileChannel channel, ByteBuffer bytes, long at) throws IOException {
        long place = at;
        while (bytes.hasRemaining()) {
            place += channel.write(bytes, place);
        }
    }

    @Override
    public String toString() {
        return Failure.shown(path);
    }
}
