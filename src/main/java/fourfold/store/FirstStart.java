// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;

/**
 * Makes the family's file where there is none yet. It is filled beside, as {@code fourfold.db.new}, forced, and only then
 * given its name: it is there whole or not at all, whenever the program is killed or the power goes. What a killed one
 * left is taken away by the next first start.
 */
final class FirstStart {
    private static final UUID SEAT = UUID.fromString("35c1b5a4-7d0b-4a57-9d59-0b8c2d1a6e43");

    /** How often a program looks that waits for another. */
    private static final Duration SOON = Duration.ofMillis(10);

    private FirstStart() {}

    /** Fills a file that is empty. */
    interface Filling {
        void into(Path empty) throws IOException, SQLException;
    }

    /**
     * Makes the file, unless it is there. Of several programs that begin at once the first makes it and the others wait.
     *
     * @return false if another program was at it for all that time
     */
    static boolean make(Path file, Duration patience, Filling filling) throws IOException, SQLException {
        Path real = Journal.real(file);
        Path made = real.resolveSibling(real.getFileName() + ".new");
        long begun = System.nanoTime();
        Optional<DrillLock> alone = DrillLock.take(made, SEAT);
        while (alone.isEmpty() && System.nanoTime() - begun < patience.toNanos()) {
            LockSupport.parkNanos(SOON.toNanos());
            alone = DrillLock.take(made, SEAT);
        }
        if (alone.isEmpty()) {
            return false;
        }
        try (DrillLock lock = alone.get()) {
            if (!isThere(real)) {
                fill(made, filling);
                giveName(made, real);
            }
            lock.takeAway(made);
        }
        return true;
    }

    private static boolean isThere(Path file) throws IOException {
        return Files.exists(file) && Files.size(file) > 0;
    }

    private static void fill(Path made, Filling filling) throws IOException, SQLException {
        Disk.REAL.delete(made);
        try {
            Rights.makeFile(made);
            filling.into(made);
            DatabaseCopy.force(made);
        } catch (IOException | SQLException | RuntimeException e) {
            Files.deleteIfExists(made);
            throw e;
        }
    }

    private static void giveName(Path made, Path file) throws IOException {
        // A journal without its file is worth nothing, and beside the new file it would be taken for its own.
        for (Path left : List.of(Journal.rollback(file), Journal.log(file))) {
            Disk.REAL.delete(left);
        }
        Disk.REAL.rename(made, file);
    }
}
