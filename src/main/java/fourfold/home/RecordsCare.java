// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;
import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Journal;
import fourfold.store.Store;
import fourfold.upkeep.Advance;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Difference;
import fourfold.upkeep.Restoration;
import fourfold.upkeep.Verification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The care of the records while they are open: copies for safekeeping, a check, going back, moving, writing out. */
public final class RecordsCare {
    private final Store store;
    private final Optional<Path> file;
    private final PracticeRecords records;
    private final ChildRegister children;
    private final Runnable letGo;

    RecordsCare(Store store, Optional<Path> file, PracticeRecords records, ChildRegister children, Runnable letGo) {
        this.store = store;
        this.file = file;
        this.records = records;
        this.children = children;
        this.letGo = letGo;
    }

    /**
     * How it stands.
     *
     * @param file the family's file; empty for the demo, which is thrown away
     * @param folder where the backups are
     * @param backups all of them, the newest first
     * @param whole the newest that was read just now and found whole
     * @param made when that was made
     */
    public record State(
            Optional<Path> file, Path folder, List<Backup> backups, Optional<Backup> whole, Optional<Instant> made) {
        public State {
            backups = List.copyOf(backups);
        }
    }

    /** Looks at the backups, and reads the newest. */
    public State state() {
        if (file.isEmpty()) {
            return new State(file, Path.of(""), List.of(), Optional.empty(), Optional.empty());
        }
        Backups backups = Backups.of(file.get());
        Optional<Backup> whole = backups.lastGood();
        return new State(file, backups.folder(), backups.all(), whole, whole.flatMap(RecordsCare::made));
    }

    private static Optional<Instant> made(Backup backup) {
        try {
            return Optional.of(Files.getLastModifiedTime(backup.file()).toInstant());
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Makes a backup that is never thinned out. */
    public Backup backUp(LocalDate today, Advance advance) {
        return Backups.of(family()).named(today + "-by-hand", advance);
    }

    /** Lays a whole, checked copy in a folder under the file's own name, or makes the file that is named. */
    public Backup copyTo(Path place, Advance advance) {
        Path file = family();
        Path name = file.getFileName();
        return Backups.of(file).to(Files.isDirectory(place) && name != null ? place.resolve(name) : place, advance);
    }

    /** What is wrong with the file; nothing if all is well. */
    public List<Problem> check(Advance advance) {
        return Verification.ofOpen(family(), advance);
    }

    /** What going back to a backup, or to a copy from another computer, would bring and cost. */
    public Difference difference(Path backup, Advance advance) {
        return Difference.of(family(), backup, advance);
    }

    /**
     * Puts a backup in the file's place. The home is closed with it, whatever comes of it: another has to be opened.
     *
     * @return where the file that was there is now
     */
    public Optional<Path> goBackTo(Path backup) {
        Path file = family();
        if (Journal.real(backup).equals(Journal.real(file))) {
            throw new RecordsFailure(Task.RESTORE, backup.toString(), Problem.of(Reason.FILE_EXISTS));
        }
        letGo.run();
        return Restoration.of(file, backup).aside();
    }

    /**
     * Writes all children's answers to a new file, as CSV.
     *
     * @throws IOException as the system says it; a file that is there already is never written over
     */
    public void writeOut(Path table) throws IOException {
        List<Child> all = children.all().stream().map(KnownChild::child).toList();
        NewFile.write(table, writer -> records.write(all, writer));
    }

    private Path family() {
        return file.orElseThrow(
                () -> new RecordsFailure(Task.LOOK_AT_BACKUPS, store.where(), Problem.of(Reason.DEMO_MEETS_NOBODY)));
    }
}
