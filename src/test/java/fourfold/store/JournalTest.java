// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.Restoration;
import fourfold.upkeep.RowCounts;
import fourfold.upkeep.RowCounts.Kind;
import fourfold.upkeep.Salvage;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Guards against an answer that stands in the log beside the file and is missed by whoever looks at the file. */
class JournalTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final DrillSession DRILL = Invented.session(ANA, 1);
    private static final Merge.Said NOTHING = new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0);
    private static final int GIVEN = 5;

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    private static List<Answer> answers(int last) {
        return IntStream.rangeClosed(1, last)
                .mapToObj(position -> Invented.answer(DRILL, position))
                .toList();
    }

    private static void give(Store store) {
        store.add(ANA);
        store.begin(DRILL);
        answers(GIVEN).forEach(store::keep);
    }

    private static List<Answer> in(Path file) {
        try (Store store = Store.open(file)) {
            return store.answers(ANA.id());
        }
    }

    private List<String> beside(Path file) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString())
                    // The empty file of the seats holds nothing.
                    .filter(name -> name.startsWith(file.getFileName() + "-") && !name.endsWith("-drills"))
                    .sorted()
                    .toList();
        }
    }

    /** What a program leaves that is killed with its last answers in the log: both files as they are at that moment. */
    private Path killed() throws IOException {
        Path living = folder.resolve("living.db");
        Store.open(living).close();
        try (Store store = Store.open(living)) {
            give(store);
            Files.copy(living, file());
            Files.copy(Journal.log(living), Journal.log(file()));
        }
        Files.delete(living);
        assertTrue(Journal.isHot(Journal.log(file())));
        return file();
    }

    /** A single file that is whole by itself, with all answers. */
    private void assertWholeAlone(Path copy) throws IOException {
        assertFalse(FileHead.isLogged(copy), copy + " is kept with a log");
        assertFalse(Files.exists(Journal.log(copy)), copy + " has a log beside it");
        assertEquals(List.of(), Verification.of(copy));
        Path alone = Files.createTempDirectory(folder, "alone").resolve("alone.db");
        Files.copy(copy, alone);
        assertEquals(answers(GIVEN), in(alone));
    }

    @Test
    void answersStandInTheLogWhileTheFileIsOpenAndTheLastCloseLeavesOneFile() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            assertEquals(List.of("family.db-shm", "family.db-wal"), beside(file()));
            try (Store second = Store.open(file())) {
                assertEquals(answers(GIVEN), second.answers(ANA.id()));
            }
            assertEquals(List.of("family.db-shm", "family.db-wal"), beside(file()));
        }
        assertEquals(List.of(), beside(file()));
        assertTrue(FileHead.isLogged(file()));
        assertEquals(answers(GIVEN), in(Files.copy(file(), folder.resolve("copy.db"))));
    }

    @Test
    void afterADrillTheFileHoldsWhatTheLogHeld() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            store.checkpoint();
            Files.copy(file(), folder.resolve("copy.db"));
        }
        assertEquals(answers(GIVEN), in(folder.resolve("copy.db")));
    }

    @Test
    void manyWritesWithoutADrillsEndComeIntoTheFileToo() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            // Many times quicker, and no other number of writes.
            store.database().read(RecordsFailure.Task.READ_ANSWERS, c -> {
                Connections.run(c, "PRAGMA synchronous = OFF");
                return c;
            });
            long most = 0;
            for (int write = 0; write < 2_100; write++) {
                store.keepHomeSetting("window", "80x" + write);
                most = Math.max(most, Files.size(Journal.log(file())));
            }
            assertEquals(most, Files.size(Journal.log(file())), "the log is begun anew and grows no more");
            Files.copy(file(), folder.resolve("copy.db"));
        }
        assertEquals(answers(GIVEN), in(folder.resolve("copy.db")));
    }

    @Test
    void aReaderHoldsUpNeitherAnAnswerNorTheEndOfADrillNorTheClose() throws IOException, SQLException {
        Store.open(file()).close();
        try (Connection reader = Connections.reading(file())) {
            try (Store store = Store.open(file())) {
                store.add(ANA);
                reader.setAutoCommit(false);
                Database.query(reader, "SELECT COUNT(*) FROM child", none -> {}, row -> 1);
                long begun = System.nanoTime();
                store.begin(DRILL);
                answers(GIVEN).forEach(store::keep);
                store.checkpoint();
                assertTrue(System.nanoTime() - begun < Duration.ofSeconds(2).toNanos(), "a wait takes five seconds");
            }
            assertEquals(List.of("family.db-shm", "family.db-wal"), beside(file()), "the reader needs them");
        }
        assertEquals(answers(GIVEN), in(file()));
        assertEquals(List.of(), beside(file()), "the next close takes them away");
    }

    /** Counted by strace (strace.io), whose output is a line a call. */
    @Test
    void anAnswerTakesExactlyOneForcedWrite() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/strace")), "strace is not installed: this was not looked at");
        Store.open(file()).close();
        Files.copy(file(), folder.resolve("again.db"));
        assertEquals(40, forcedWrites(file(), 41) - forcedWrites(folder.resolve("again.db"), 1));
    }

    private long forcedWrites(Path file, int answers) throws IOException, InterruptedException {
        Path trace = folder.resolve(answers + ".trace");
        List<String> command = new ArrayList<>(
                List.of("/usr/bin/strace", "-f", "-qq", "-e", "trace=fsync,fdatasync", "-o", trace.toString()));
        command.addAll(OwnProcess.of(Victim.class, file.toString(), "1", Integer.toString(answers))
                .command());
        Process process = new ProcessBuilder(command).start();
        List<String> told =
                process.inputReader(StandardCharsets.US_ASCII).lines().toList();
        List<String> complaints =
                process.errorReader(StandardCharsets.US_ASCII).lines().toList();
        process.waitFor();
        assumeFalse(complaints.toString().contains("ptrace"), "strace may not watch programs here");
        assertEquals(answers, told.size(), complaints.toString());
        try (Stream<String> calls = Files.lines(trace)) {
            return calls.filter(call -> call.contains("sync(")).count();
        }
    }

    /** As a program before 27 November 2026 kept its file. */
    private void makeOlder() throws SQLException, IOException {
        Journal.intoOneFile(file());
        assertFalse(FileHead.isLogged(file()));
    }

    @Test
    void anOlderFileThatIsHeldStaysWithItsRollbackJournalAndTheNextStartBringsItToTheLog()
            throws IOException, SQLException {
        Store.open(file()).close();
        makeOlder();
        try (Connection reader = Connections.reading(file())) {
            reader.setAutoCommit(false);
            Database.query(reader, "SELECT COUNT(*) FROM child", none -> {}, row -> 1);
            long begun = System.nanoTime();
            Store store = Store.open(file());
            assertTrue(System.nanoTime() - begun < Duration.ofSeconds(2).toNanos(), "a wait takes five seconds");
            assertEquals(
                    "It is kept with a rollback journal: it is whole by itself whenever no answer is just being written.",
                    InEnglish.problems(Verification.notes(file())).get(0));
            reader.rollback();
            give(store);
            assertFalse(FileHead.isLogged(file()));
            store.close();
        }
        assertEquals(answers(GIVEN), in(file()));
        assertTrue(FileHead.isLogged(file()));
        assertTrue(
                InEnglish.problems(Verification.notes(file())).get(0).startsWith("It is kept with a write-ahead log"));
    }

    /** A folder in the place of the shared memory stands for a disk that has none. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void whereADiskSharesNoMemoryTheFileIsKeptWithARollbackJournal() throws IOException, SQLException {
        Files.createDirectory(folder.resolve("family.db-shm"));
        try (Store store = Store.open(file())) {
            give(store);
            assertFalse(FileHead.isLogged(file()));
        }
        assertEquals(answers(GIVEN), in(file()));
        Files.delete(folder.resolve("family.db-shm"));
        Store.open(file()).close();
        assertTrue(FileHead.isLogged(file()));
        Files.createDirectory(folder.resolve("family.db-shm"));
        assertEquals(answers(GIVEN), in(file()), "also when it was brought there with its log");
        assertFalse(FileHead.isLogged(file()));
    }

    @Test
    void theNextStartTakesInWhatAKilledProgramLeftInTheLog() throws IOException {
        assertEquals(answers(GIVEN), in(killed()));
        assertEquals(List.of(), beside(file()));
    }

    @Test
    void verifySeesTheLogAndChangesNothing() throws IOException {
        byte[] before = Files.readAllBytes(killed());
        byte[] log = Files.readAllBytes(Journal.log(file()));
        assertEquals(List.of(), Verification.of(file()));
        assertArrayEquals(before, Files.readAllBytes(file()));
        assertArrayEquals(log, Files.readAllBytes(Journal.log(file())));
        assertEquals(answers(GIVEN), in(file()));
    }

    @Test
    void verifyTellsOfDamageThatIsOnlyInTheLog() throws IOException, SQLException {
        killed();
        try (Connection other =
                Connections.writing(file(), StoreFile.PATIENCE, false).getConnection()) {
            Connections.run(other, "PRAGMA wal_autocheckpoint = 0");
            Connections.run(other, "PRAGMA ignore_check_constraints = 1");
            Connections.run(other, "UPDATE answer SET purpose = 77 WHERE position = 2");
            assertTrue(Verification.of(file()).toString().contains("CHECK constraint failed in answer"));
        }
    }

    @Test
    void backupsHoldWhatStandsInTheLogAndAreWholeByThemselves() throws IOException {
        Path backup = Backups.of(killed()).named("by-hand").file();
        assertWholeAlone(backup);
        assertTrue(Journal.isHot(Journal.log(file())), "a backup only reads");
    }

    @Test
    void aCopyMadeWhileTheProgramRunsIsOneWholeFileAndReplacesNone() throws IOException {
        Path copy = folder.resolve("stick.db");
        try (Store store = Store.open(file())) {
            give(store);
            Backups.of(file()).to(copy);
            String told = InEnglish.failure(() -> Backups.of(file()).to(copy));
            assertTrue(told.endsWith("there is such a file already; name another file"), told);
        }
        assertWholeAlone(copy);
    }

    @Test
    void whoMergesTheFileGetsWhatStandsInTheLog() throws IOException {
        byte[] before = Files.readAllBytes(killed());
        Path other = folder.resolve("other.db");
        try (Store store = Store.open(other)) {
            assertEquals(GIVEN, Merge.of(store, file(), NOTHING).came().of(RowCounts.Kind.ANSWER));
        }
        assertEquals(answers(GIVEN), in(other));
        assertArrayEquals(before, Files.readAllBytes(file()), "the other file is only read");
        assertTrue(Journal.isHot(Journal.log(file())));
    }

    @Test
    void whoMergesAFileThatIsInUseGetsWhatStandsInTheLog() {
        try (Store living = Store.open(file());
                Store store = Store.open(folder.resolve("other.db"))) {
            give(living);
            assertEquals(GIVEN, Merge.of(store, file(), NOTHING).came().of(RowCounts.Kind.ANSWER));
            living.keep(Invented.answer(DRILL, GIVEN + 1));
            assertEquals(1, Merge.of(store, file(), NOTHING).came().of(RowCounts.Kind.ANSWER));
        }
    }

    @Test
    void salvageReadsTheLogAndWritesOneWholeFile() throws IOException {
        Path fresh = folder.resolve("saved.db");
        RowCounts one = new RowCounts(Map.of(Kind.CHILD, 1, Kind.DRILL, 1, Kind.ANSWER, GIVEN));
        assertEquals(
                new Salvage(one, 0),
                Salvage.of(killed(), List.of(), fresh, n -> "Salvaged " + n),
                "each answer once only");
        assertWholeAlone(fresh);
    }

    @Test
    void oneWrongBitInTheLogCostsSalvageNoMoreThanItsRow() throws IOException {
        byte[] log = Files.readAllBytes(Journal.log(killed()));
        // A check sum: SQLite itself lets go of everything from here on.
        log[32 + 16] ^= 1;
        Files.write(Journal.log(file()), log);
        Path fresh = folder.resolve("saved.db");
        assertEquals(
                GIVEN,
                Salvage.of(file(), List.of(), fresh, n -> "Salvaged " + n)
                        .saved()
                        .of(RowCounts.Kind.ANSWER));
        assertEquals(answers(GIVEN), in(fresh));
    }

    @Test
    void restoringKeepsAsideWhatStoodInTheLogAndTheNewFileNeverMeetsTheOldLog() throws IOException {
        Path other = folder.resolve("other.db");
        Store.open(other).close();
        Path backup = Backups.of(other).named("empty").file();
        Path aside = Restoration.of(killed(), backup).aside().orElseThrow();
        assertEquals(List.of(), beside(file()));
        assertWholeAlone(aside);
        assertEquals(List.of(), in(file()));
    }

    @Test
    void aDamagedFileIsKeptAsideTogetherWithItsLog() throws IOException {
        Path other = folder.resolve("other.db");
        Store.open(other).close();
        Path backup = Backups.of(other).named("empty").file();
        byte[] log = Files.readAllBytes(Journal.log(killed()));
        byte[] damaged = Files.readAllBytes(file());
        java.util.Arrays.fill(damaged, 4096, 3 * 4096, (byte) 7);
        Files.write(file(), damaged);
        Path aside = Restoration.of(file(), backup).aside().orElseThrow();
        assertArrayEquals(damaged, Files.readAllBytes(aside));
        assertArrayEquals(log, Files.readAllBytes(Journal.log(aside)));
        assertEquals(List.of(), beside(file()));
        assertEquals(List.of(), in(file()));
    }

    @Test
    void whoRestoresAFileWithALogGetsWhatStandsInIt() throws IOException {
        Path present = folder.resolve("present.db");
        Store.open(present).close();
        byte[] before = Files.readAllBytes(killed());
        Restoration.of(present, file());
        assertEquals(answers(GIVEN), in(present));
        assertArrayEquals(before, Files.readAllBytes(file()));
        assertTrue(Journal.isHot(Journal.log(file())));
    }

    @Test
    void aFileThatAnotherProgramHasOpenIsNotReplaced() {
        try (Store store = Store.open(file())) {
            give(store);
        }
        Path backup = Backups.of(file()).named("by-hand").file();
        try (Store open = Store.open(file())) {
            String told = InEnglish.failure(() -> Restoration.of(file(), backup));
            assertTrue(told.contains("a program still has it open: another window of Fourfold"), told);
            assertEquals(answers(GIVEN), open.answers(ANA.id()));
        }
        assertFalse(Files.exists(folder.resolve("family-aside.db")));
    }

    @Test
    void theCopyBeforeAMigrationIsWholeByItself() throws IOException {
        StoreFile.open(killed(), StoreFile.PATIENCE, Later.schema()).close();
        assertWholeAlone(folder.resolve("family-before-5.db"));
        assertTrue(FileHead.isLogged(file()));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void theLogIsForTheOwnerAlone() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            for (String ending : List.of("-wal", "-shm")) {
                assertEquals(
                        "rw-------",
                        PosixFilePermissions.toString(Files.getPosixFilePermissions(Journal.beside(file(), ending))));
            }
        }
    }

    @Test
    void nothingOfARemovedChildStaysInTheLog() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            assertTrue(isSaidIn(Journal.log(file())));
            store.remove(ANA.id(), Instant.EPOCH);
            assertFalse(isSaidIn(Journal.log(file())));
            assertFalse(isSaidIn(file()));
        }
    }

    private static boolean isSaidIn(Path file) throws IOException {
        return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(ANA.name());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aLogThatSomebodyDeletedIsNotWrittenToAndCostsNothing() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
            Files.delete(Journal.log(file()));
            String told = InEnglish.failure(() -> store.keep(Invented.answer(DRILL, GIVEN + 1)));
            assertTrue(told.contains("was moved, removed or replaced while the program was running"), told);
        }
        assertEquals(answers(GIVEN), in(file()));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aFileThatIsRenamedWhileItIsOpenTakesItsLastAnswersAlong() throws IOException {
        Path moved = folder.resolve("moved.db");
        try (Store store = Store.open(file())) {
            give(store);
            Files.move(file(), moved);
        }
        assertEquals(answers(GIVEN), in(moved));
    }

    @Test
    void aFileThatIsGoneBesideItsLogIsNotBegunAnew() throws IOException {
        byte[] kept = Files.readAllBytes(killed());
        Files.delete(file());
        String told = InEnglish.failure(() -> Store.open(file()));
        assertTrue(told.contains("it is gone or empty, but the log of its last answers is still there"), told);
        assertFalse(Files.exists(file()));
        Files.write(file(), kept);
        assertEquals(answers(GIVEN), in(file()));
    }

    @Test
    void aBareCopyInAFolderThatCanNotBeWrittenIsReadAllTheSame() throws IOException {
        try (Store store = Store.open(file())) {
            give(store);
        }
        Path readOnly = Files.createDirectory(folder.resolve("read-only"));
        Path copy = Files.copy(file(), readOnly.resolve("family.db"));
        Files.setPosixFilePermissions(readOnly, PosixFilePermissions.fromString("r-x------"));
        try {
            assumeFalse(Files.isWritable(readOnly), "this person may write everything");
            assertEquals(List.of(), Verification.of(copy));
            Path present = folder.resolve("present.db");
            Restoration.of(present, copy);
            assertEquals(answers(GIVEN), in(present));
            try (Store store = Store.open(folder.resolve("other.db"))) {
                assertEquals(GIVEN, Merge.of(store, copy, NOTHING).came().of(RowCounts.Kind.ANSWER));
            }
        } finally {
            Files.setPosixFilePermissions(readOnly, PosixFilePermissions.fromString("rwx------"));
        }
    }
}
