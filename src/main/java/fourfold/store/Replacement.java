// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Puts another file in the place of the family's, in steps each of which may be the last that a killed program does. The
 * new file is written beside, as {@code fourfold.db.unfinished}; once it is whole it is renamed {@code
 * fourfold.db.restored}. Before that name nothing was done, and the next start takes the new file away; after it, the next
 * start does what is left: it keeps the old file aside with what stands beside it, takes its log and journal away, and
 * gives the new file its name.
 */
public final class Replacement implements AutoCloseable {
    private static final String UNFINISHED = ".unfinished";
    private static final String DECIDED = ".restored";

    /** Whoever replaces the file holds this seat beside those of the children. */
    private static final UUID SEAT = UUID.fromString("8d7cf7e0-0f5b-4b7e-9c4c-5f6a2f0c7d11");

    private final Path file;
    private final Disk disk;
    private final DrillLock lock;

    private Replacement(Path file, Disk disk, DrillLock lock) {
        this.file = file;
        this.disk = disk;
        this.lock = lock;
    }

    /**
     * Begins a replacement.
     *
     * @return empty if another program is at it
     */
    public static Optional<Replacement> begin(Path file, Disk disk) throws IOException {
        Path real = Journal.real(file);
        Optional<Replacement> begun = DrillLock.take(real, SEAT).map(l -> new Replacement(real, disk, l));
        if (begun.isPresent()) {
            begun.get().resume();
        }
        return begun;
    }

    /** Ends what a killed program began; called before the file is opened. */
    static void endBegun(Path file) throws IOException {
        Path real = Journal.real(file);
        if (Files.exists(beside(real, DECIDED)) || Files.exists(beside(real, UNFINISHED))) {
            begin(real, Disk.REAL).ifPresent(Replacement::close);
        }
    }

    /** Whether a replacement was decided and is not done. */
    public static boolean isBegun(Path file) {
        return Files.exists(beside(Journal.real(file), DECIDED));
    }

    private void resume() throws IOException {
        try {
            if (Files.exists(beside(file, DECIDED))) {
                finish();
            }
            disk.delete(beside(file, UNFINISHED));
        } catch (IOException | RuntimeException e) {
            close();
            throw e;
        }
    }

    /**
     * Puts the new file in place.
     *
     * @param whole the new file; it stays where it is
     * @return where the old one is now; empty if there was none
     */
    public Optional<Path> with(Path whole) throws IOException {
        Path unfinished = beside(file, UNFINISHED);
        try {
            Rights.makeFile(unfinished);
            disk.fill(whole, unfinished);
        } catch (IOException e) {
            disk.delete(unfinished);
            throw e;
        }
        disk.rename(unfinished, beside(file, DECIDED));
        return finish();
    }

    private Optional<Path> finish() throws IOException {
        List<Path> left = List.of(Journal.log(file), Journal.rollback(file));
        boolean any = Stream.concat(Stream.of(file), left.stream()).anyMatch(Files::exists);
        Optional<Path> aside = any ? Optional.of(aside()) : Optional.empty();
        if (aside.isPresent()) {
            putAside(file, aside.get());
            for (Path beside : left) {
                putAside(beside, ofTheSame(beside, aside.get()));
            }
        }
        // Only now that they are kept: beside the new file they would be taken for its own and destroy it.
        for (Path beside : left) {
            disk.delete(beside);
        }
        disk.delete(Journal.beside(file, "-shm"));
        disk.rename(beside(file, DECIDED), file);
        return aside;
    }

    /** Where a killed program put the old file, or was about to, or else a new name. */
    private Path aside() throws IOException {
        String beginning = BackupFiles.stem(file) + "-aside";
        try (Stream<Path> files = Files.list(file.resolveSibling(""))) {
            for (Path other : files.toList()) {
                boolean begun = (Files.exists(file) && Files.isSameFile(other, file)) || Files.size(other) == 0;
                if (begun && String.valueOf(other.getFileName()).matches("\\Q" + beginning + "\\E(-\\d+)?\\.\\w+")) {
                    return other;
                }
            }
        }
        return DatabaseCopy.fresh(file, "aside");
    }

    private void putAside(Path from, Path to) throws IOException {
        if (Files.exists(from) && !(Files.exists(to) && Files.isSameFile(from, to))) {
            disk.link(from, to);
        }
    }

    private Path ofTheSame(Path beside, Path aside) {
        return aside.resolveSibling(String.valueOf(beside.getFileName())
                .replace(String.valueOf(file.getFileName()), String.valueOf(aside.getFileName())));
    }

    private static Path beside(Path file, String ending) {
        return file.resolveSibling(file.getFileName() + ending);
    }

    @Override
    public void close() {
        lock.close();
    }
}
