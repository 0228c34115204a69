// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.UUID;

/**
 * A child's seat: whoever holds it is the one program in which that child practises. The system gives it back when the
 * program ends in whatever way, so a program that died leaves nothing in the way. It is a byte of an empty side file, a
 * different one for each child. A program should hold one seat at a time: on some systems giving one back gives back all.
 */
public final class DrillLock implements AutoCloseable {
    private static final String ENDING = "-drills";

    private final FileChannel channel;
    private final FileLock lock;

    private DrillLock(FileChannel channel, FileLock lock) {
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Takes the seat.
     *
     * @return empty if the child practises in another program, or in another window of this one
     * @throws RecordsFailure if the side file can't be used
     */
    public static Optional<DrillLock> take(Path file, UUID child) {
        // Whoever comes by a link comes to the same file.
        Path side = Journal.beside(file, ENDING);
        try {
            Rights.makeFile(side);
            FileChannel channel = FileChannel.open(side, StandardOpenOption.WRITE);
            Optional<FileLock> lock = lock(channel, child.getMostSignificantBits() >>> 1);
            if (lock.isEmpty()) {
                channel.close();
            }
            return lock.map(l -> new DrillLock(channel, l));
        } catch (IOException e) {
            throw new RecordsFailure(Task.LOCK_DRILL, Failure.shown(side), Failure.problem(e), e);
        }
    }

    private static Optional<FileLock> lock(FileChannel channel, long place) throws IOException {
        try {
            return Optional.ofNullable(channel.tryLock(place, 1, false));
        } catch (OverlappingFileLockException e) {
            return Optional.empty();
        }
    }

    /** Takes the side file away too: only where nobody who comes later could mind two seats. */
    void takeAway(Path file) throws IOException {
        Files.deleteIfExists(Journal.beside(file, ENDING));
    }

    /** Gives the seat back. */
    @Override
    public void close() {
        try {
            lock.release();
            channel.close();
        } catch (IOException e) {
            // The system gives it back at the latest when the program ends.
        }
    }
}
