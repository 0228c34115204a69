// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a backup that is no backup, that others can read, or that a later one or a wrong clock takes away. */
class BackupsTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final LocalDate DAY = LocalDate.parse("2026-03-02");

    @TempDir
    private Path folder = Path.of("");

    private Path filled() {
        Path file = MadeOnce.EMPTY.at(folder.resolve("fourfold.db"));
        try (Store store = Store.open(file)) {
            store.add(ANA);
        }
        return file;
    }

    @Test
    void aBackupIsMadeOnceADayWhileTheFileIsInUse() {
        Path file = filled();
        try (Store store = Store.open(file)) {
            DrillSession session = Invented.session(ANA, 1);
            store.begin(session);
            store.keep(Invented.answer(session, 1));
            Backup backup = Backups.of(file).ofDay(DAY).orElseThrow();
            store.keep(Invented.answer(session, 2));
            assertEquals(Optional.empty(), Backups.of(file).ofDay(DAY));
            assertEquals("2026-03-02", backup.name());
            assertEquals(List.of(), Verification.of(backup.file()));
            try (Store copy = Store.open(backup.file())) {
                assertEquals(List.of(Invented.answer(session, 1)), copy.answers(ANA.id()));
            }
        }
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void backupsAreForTheOwnerAlone() throws IOException {
        Backup backup = Backups.of(filled()).ofDay(DAY).orElseThrow();
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(backup.file())));
        assertEquals(
                "rwx------",
                PosixFilePermissions.toString(Files.getPosixFilePermissions(
                        Backups.of(folder.resolve("fourfold.db")).folder())));
    }

    @Test
    void namedBackupsStayApartAndAreNeverThinnedOut() {
        Path file = filled();
        assertEquals("before-removal", Backups.of(file).named("before-removal").name());
        assertEquals(
                "before-removal-2", Backups.of(file).named("before-removal").name());
        for (int day = 0; day < 60; day++) {
            Backups.of(file).ofDay(DAY.plusDays(day));
        }
        Set<String> names = new HashSet<>();
        Backups.of(file).all().forEach(b -> names.add(b.name()));
        assertTrue(names.containsAll(Set.of("before-removal", "before-removal-2", "2026-04-30", "2026-04-24")));
        // Seven days, the newest of the weeks before, and the newest of March.
        assertEquals(2 + 7 + 3 + 1, names.size(), names.toString());
    }

    @Property(tries = 50)
    void thinningKeepsTheNewestDaysAndAtMostThirtySix(@ForAll @IntRange(min = 1, max = 4000) int days) {
        Set<LocalDate> kept = new HashSet<>();
        for (int day = 0; day < days; day++) {
            kept.add(DAY.plusDays(day));
            kept = new HashSet<>(BackupRetention.kept(kept));
        }
        assertTrue(kept.size() <= 36, kept.toString());
        for (int back = 0; back < Math.min(days, 7); back++) {
            assertTrue(kept.contains(DAY.plusDays(days - 1 - back)));
        }
        LocalDate oldest = kept.stream().min(LocalDate::compareTo).orElseThrow();
        assertTrue(
                days < 800 || oldest.isBefore(DAY.plusDays(days - 669)), "nothing older than two years but " + oldest);
    }

    @Test
    void aClockThatStoodTenYearsAheadTakesNoBackupAway() {
        Set<LocalDate> days = new HashSet<>();
        for (int day = 0; day < 6; day++) {
            days.add(DAY.plusDays(day));
        }
        Set<LocalDate> before = new HashSet<>(days);
        days.add(DAY.plusYears(10));
        Set<LocalDate> kept = BackupRetention.kept(days);
        assertTrue(kept.containsAll(before), kept.toString());
    }

    @Test
    void aDamagedFileIsNotBackedUpAndOlderBackupsStay() throws IOException {
        Path file = filled();
        Backup good = Backups.of(file).ofDay(DAY).orElseThrow();
        byte[] bytes = Files.readAllBytes(file);
        java.util.Arrays.fill(bytes, 4096 * 2, 4096 * 6, (byte) 0);
        Files.write(file, bytes);
        assertThrows(RecordsFailure.class, () -> Backups.of(file).ofDay(DAY.plusDays(1)));
        assertEquals(List.of(good), Backups.of(file).all());
        try (Stream<Path> left = Files.list(Backups.of(file).folder())) {
            assertEquals(1, left.count(), "nothing half done is left");
        }
    }

    @Test
    void restoringKeepsThePresentFileAside() throws IOException {
        Path file = filled();
        Backup backup = Backups.of(file).ofDay(DAY).orElseThrow();
        byte[] broken = "bread, milk".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        Files.write(file, broken);
        Restoration.Done done = Restoration.of(file, backup.file());
        assertArrayEquals(broken, Files.readAllBytes(done.aside().orElseThrow()));
        assertTrue(Files.exists(backup.file()));
        try (Store store = Store.open(file)) {
            assertEquals(List.of(ANA), store.children());
        }
    }

    @Test
    void aBackupThatIsNotWholeIsPassedOverAndNotRestored() throws IOException {
        Path file = filled();
        Backup older = Backups.of(file).ofDay(DAY).orElseThrow();
        Backup newer = Backups.of(file).ofDay(DAY.plusDays(1)).orElseThrow();
        Files.write(newer.file(), java.util.Arrays.copyOf(Files.readAllBytes(newer.file()), 5000));
        assertEquals(Optional.of(older), Backups.of(file).lastGood());
        byte[] before = Files.readAllBytes(file);
        assertThrows(RecordsFailure.class, () -> Restoration.of(file, newer.file()));
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    @Test
    void aFileThatIsGoneBesideBackupsIsNotBegunAnew() throws IOException {
        Path file = filled();
        Backups.of(file).ofDay(DAY);
        Files.delete(file);
        String told = InEnglish.failure(() -> Store.open(file));
        assertTrue(told.contains("it is gone or empty, but there are backups"), told);
        assertFalse(Files.exists(file));
        Restoration.of(file, Backups.of(file).lastGood().orElseThrow().file());
        try (Store store = Store.open(file)) {
            assertEquals(List.of(ANA), store.children());
        }
    }
}
