// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * A folder for temporary files that only this person can read. It goes when it is closed; one that a killed program left,
 * with a copy of a family's answers in it, is taken away by the next program that starts. A lock tells the two apart: the
 * system gives it back however a program ends.
 */
public final class PrivateFolder implements AutoCloseable {
    private static final String BEGINNING = "fourfold-copy";
    private static final String LOCK = "in-use";
    private static final String LOCK_BEING_MADE = "being-made";

    /** Those of this program: to open the lock of one and close it again would give the lock back (POSIX, fcntl). */
    private static final Set<Path> LIVING = ConcurrentHashMap.newKeySet();

    /** A folder without a lock is being made by another program, unless it is as old as this. */
    private static final Duration BEING_MADE = Duration.ofMinutes(10);

    private final Path folder;
    private final FileChannel lock;

    private PrivateFolder(Path folder, FileChannel lock) {
        this.folder = folder;
        this.lock = lock;
    }

    /** Makes one (mode 0700 where the system knows such rights). */
    static PrivateFolder make() throws IOException {
        clearLeftBehind();
        Path folder = Files.createTempDirectory(BEGINNING);
        LIVING.add(folder);
        // It gets its name when it is locked: seen without a lock it would be taken for left behind.
        Path file = folder.resolve(LOCK_BEING_MADE);
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        channel.tryLock();
        Files.move(file, folder.resolve(LOCK));
        return new PrivateFolder(folder, channel);
    }

    /** The path of a file in it. */
    Path file(String name) {
        return folder.resolve(name);
    }

    /** Takes away what killed programs of this person left in the folder for temporary files. */
    public static void clearLeftBehind() {
        try (DirectoryStream<Path> folders =
                Files.newDirectoryStream(Path.of(System.getProperty("java.io.tmpdir", ".")), BEGINNING + "*")) {
            for (Path left : folders) {
                if (!LIVING.contains(left)
                        && Files.isDirectory(left, LinkOption.NOFOLLOW_LINKS)
                        && isLeftBehind(left)) {
                    remove(left);
                }
            }
        } catch (IOException e) {
            // What can't be taken away now can be at the next start.
        }
    }

    private static boolean isLeftBehind(Path folder) throws IOException {
        Path file = folder.resolve(LOCK);
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            Instant made = Files.getLastModifiedTime(folder).toInstant();
            return made.isBefore(Instant.now().minus(BEING_MADE));
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                FileLock free = channel.tryLock()) {
            return free != null;
        } catch (OverlappingFileLockException | IOException e) {
            return false;
        }
    }

    private static void remove(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : List.copyOf(files.toList())) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(folder);
        } catch (IOException e) {
            // The next start tries again.
        }
    }

    @Override
    public void close() {
        try {
            lock.close();
        } catch (IOException e) {
            // The system closes it with the program.
        }
        remove(folder);
        LIVING.remove(folder);
    }
}
