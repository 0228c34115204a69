// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteDataSource;

/** Guards against harming a file that is not ours, and against opening one that should not be opened. */
class StoreFileTest {
    private static final Duration SHORT = Duration.ofMillis(50);
    private static final Child ANA = Invented.child(1, "Ana");

    @TempDir
    private Path temporary = Path.of("");

    @Test
    void loadingTheDriverAheadLeavesNoFileBehind() {
        Store.loadDriver();
        assertFalse(
                List.of(Objects.requireNonNull(new java.io.File(".").list())).contains(":memory:"));
    }

    @Test
    void aNewFileAndItsFolderAreForTheOwnerAlone() throws IOException {
        Path file = temporary.resolve("a b").resolve("fourfold").resolve("q?x#%20ü.db");
        Store.open(file).close();
        assumeFalse(windows());
        assertEquals("rw-------", rights(file));
        assertEquals("rwx------", rights(temporary.resolve("a b").resolve("fourfold")));
        assertEquals("rwx------", rights(temporary.resolve("a b")));
    }

    @Test
    void theFileSaysThatItIsOursAndEveryWriteIsSynced() throws SQLException {
        Path file = usual();
        assertEquals(List.of("1181709682"), ask(file, "PRAGMA application_id"));
        assertEquals(List.of("ok"), ask(file, "PRAGMA integrity_check"));
        try (Database database = StoreFile.open(file, SHORT, Schema.TODAY)) {
            // 2 is FULL (SQLite's documentation of PRAGMAs); 0 leaves it to the program when a log comes into the file.
            assertEquals("wal", asked(database, "PRAGMA journal_mode"));
            assertEquals("0", asked(database, "PRAGMA wal_autocheckpoint"));
            assertEquals("2", asked(database, "PRAGMA synchronous"));
            assertEquals("1", asked(database, "PRAGMA foreign_keys"));
            assertEquals("50", asked(database, "PRAGMA busy_timeout"));
            assertEquals("0", asked(database, "PRAGMA ignore_check_constraints"), "left on by the look at the pages");
        }
    }

    @Test
    void aFileThatIsNotOursIsLeftAsItIs() throws IOException, SQLException {
        Path text = temporary.resolve("shopping.txt");
        Files.writeString(text, "bread, milk\n");
        assertLeftAlone(text, "it is not a Fourfold file; name another file or restore a backup");
        Files.writeString(text, "SQLite format 3\0 and then nothing more");
        assertLeftAlone(text, "it is not a Fourfold file; name another file or restore a backup");

        Path other = temporary.resolve("other.db");
        ask(other, "CREATE TABLE recipe (name TEXT)");
        assertLeftAlone(other, "it belongs to another program; name another file");
        ask(other, "PRAGMA journal_mode = WAL");
        assertLeftAlone(other, "it belongs to another program; name another file");
        assertFalse(Files.exists(temporary.resolve("other.db-wal")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "thief  | CREATE TRIGGER thief AFTER INSERT ON answer BEGIN DELETE FROM answer WHERE position > 1; END",
                "answer_log | DROP VIEW answer_log; CREATE VIEW answer_log AS SELECT 1 AS nickname",
                "ix_more | CREATE UNIQUE INDEX ix_more ON answer (drill_nr)",
                "ix_act_child | DROP INDEX ix_act_child",
                "removed_child | DROP TABLE removed_child; CREATE VIEW removed_child AS SELECT 'x' AS id, 1 AS removed_at"
            })
    void aFileWhoseTablesWereChangedBehindOurBackIsNotPractisedIn(String name, String sql)
            throws IOException, SQLException {
        Path file = usual();
        for (String one : sql.split("; (?=CREATE)")) {
            ask(file, one);
        }
        assertLeftAlone(
                file,
                "\"" + name + "\" in it is not as Fourfold makes it; restore a backup, or save what is good with"
                        + " fourfold salvage");
    }

    @Test
    void aTableOrViewOfOnesOwnBesideOursIsNoHindrance() throws SQLException {
        Path file = usual();
        ask(file, "CREATE TABLE note (text TEXT)");
        ask(file, "CREATE VIEW wrong AS SELECT * FROM answer_log WHERE outcome = 'wrong'");
        Store.open(file).close();
    }

    @Test
    void oursWithForeignTablesIsLeftAsItIs() throws IOException, SQLException {
        Path file = temporary.resolve("odd.db");
        ask(file, "CREATE TABLE recipe (name TEXT)");
        ask(file, "PRAGMA application_id = " + FileHead.APPLICATION);
        assertLeftAlone(file, "its tables are not those of any Fourfold known here; name another file");
        Path changed = usual();
        ask(changed, "UPDATE flyway_schema_history SET checksum = 7");
        assertLeftAlone(changed, "its tables are not those of any Fourfold known here; name another file");
    }

    @Test
    void aNewerFileIsLeftAsItIs() throws IOException, SQLException {
        Path file = usual();
        ask(
                file,
                "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script, checksum,"
                        + " installed_by, execution_time, success) VALUES (99, '99', 'x', 'SQL', 'V99__x.sql', 5, '', 1, 1)");
        assertLeftAlone(file, "it was written by a newer Fourfold; use that one");
    }

    @Test
    void aFolderIsNoFile() {
        assertEquals(
                "could not open " + temporary + ": it is a folder; name a file",
                InEnglish.failure(() -> Store.open(temporary)));
        Path root = temporary.getRoot();
        assertTrue(InEnglish.failure(() -> Store.open(root)).contains("it is a folder"));
    }

    @Test
    void aMissingFolderIsMadeIfTheOneAboveItIsThere() {
        Path file = temporary.resolve("new").resolve("x.db");
        Store.open(file).close();
        assertTrue(Files.exists(file));
    }

    @Test
    void aMissingPathIsNotMadeUnlessItIsOurOwn() {
        Path file = temporary.resolve("nowhere").resolve("deeper").resolve("x.db");
        assertEquals(
                "could not open " + file + ": there is no folder " + file.getParent()
                        + "; make the folder or name another file",
                InEnglish.failure(() -> Store.open(file)));
        assertFalse(Files.exists(temporary.resolve("nowhere")));
    }

    @Test
    void aFolderThatCanNotBeMadeIsNamed() throws IOException {
        Path inTheWay = Files.writeString(temporary.resolve("file"), "x");
        Path file = inTheWay.resolve("fourfold").resolve("x.db");
        String message = InEnglish.failure(() -> Store.open(file));
        assertTrue(message.startsWith("could not open " + file + ": "), message);
        assertEquals(1, message.lines().count());
        assertEquals("x", Files.readString(inTheWay));
    }

    @Test
    void aFileWithoutTheRightToWriteIsLeftAsItIs() throws IOException {
        Path file = usual();
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--------"));
        assumeFalse(Files.isWritable(file), "this person may write everything");
        assertLeftAlone(file, "it can't be read and written; check the file's rights");
    }

    @Test
    void aFolderWithoutTheRightToWriteIsNamed() throws IOException {
        Path file = usual();
        Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("r-x------"));
        try {
            assumeFalse(Files.isWritable(temporary), "this person may write everything");
            assertLeftAlone(file, "its folder can't be written; check the folder's rights or name another file");
        } finally {
            Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("rwx------"));
        }
    }

    @Test
    void aTruncatedFileIsDamagedAndLeftAsItIs() throws IOException {
        Path file = usual();
        byte[] whole = Files.readAllBytes(file);
        for (int pages : new int[] {1, 2, 5}) {
            Files.write(file, Arrays.copyOf(whole, pages * 4096));
            assertLeftAlone(file, "the file is damaged; leave it as it is and restore a backup");
        }
    }

    @Test
    void aFileInUseIsWaitedForAndThenNamed() throws IOException, SQLException {
        Path file = usual();
        try (Connection other = connect(file);
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN EXCLUSIVE");
            assertLeftAlone(file, "another program is using the file; close it and try again");
        }
        Store.open(file).close();
    }

    @Test
    void aSecondWriterWaitsForTheFirst() throws Exception {
        Path file = usual();
        try (Store store = new Store(StoreFile.open(file, StoreFile.PATIENCE, Schema.TODAY));
                Connection other = connect(file);
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            statement.execute("INSERT INTO child (id, name, created_at) VALUES ('" + Invented.id(2) + "', 'Bo', 1)");
            Thread waiting = new Thread(() -> store.add(ANA));
            waiting.start();
            awaitInsideTheLibrary(waiting);
            statement.execute("COMMIT");
            waiting.join(10_000);
            assertFalse(waiting.isAlive());
            assertEquals(
                    List.of("Bo", "Ana"),
                    store.children().stream().map(Child::name).toList());
        }
    }

    @Test
    void aWriterThatWaitsInVainSaysSoAndNothingIsKept() throws Exception {
        Path file = usual();
        try (Store store = new Store(StoreFile.open(file, SHORT, Schema.TODAY));
                Connection other = connect(file);
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            assertEquals(
                    "could not add the child in " + file
                            + ": another program is using the file; close it and try again",
                    InEnglish.failure(() -> store.add(ANA)));
            assertEquals(List.of(), store.children(), "reading goes on meanwhile");
            statement.execute("ROLLBACK");
            store.add(ANA);
            assertEquals(List.of(ANA), store.children());
        }
    }

    @Test
    void twoStoresOnOneFileSeeEachOthersAnswers() {
        Path file = usual();
        DrillSession session = Invented.session(ANA, 1);
        try (Store one = Store.open(file);
                Store two = Store.open(file)) {
            one.add(ANA);
            two.begin(session);
            IntStream.rangeClosed(1, 40).forEach(p -> (p % 2 == 0 ? one : two).keep(Invented.answer(session, p)));
            assertEquals(one.answers(ANA.id()), two.answers(ANA.id()));
            assertEquals(40, one.answers(ANA.id()).size());
        }
    }

    @Test
    void anOlderFileIsCopiedAsideAndBroughtUpToDate() throws Exception {
        Path file = usual();
        try (Store store = Store.open(file)) {
            store.add(ANA);
        }
        Schema later = Later.schema();
        new Store(StoreFile.open(file, SHORT, later)).close();
        assertEquals(
                List.of("CREATE TABLE note (words VARCHAR(40))"),
                ask(file, "SELECT sql FROM sqlite_schema WHERE name = 'note'"));

        Path copy = file.resolveSibling("fourfold-before-5.db");
        try (Store before = Store.open(copy)) {
            assertEquals(List.of(ANA), before.children());
        }
        assertEquals(List.of(), ask(copy, "SELECT name FROM sqlite_schema WHERE name = 'note'"));
        if (!windows()) {
            assertEquals("rw-------", rights(copy));
        }
        try (Stream<Path> files = Files.list(temporary)) {
            assertEquals(2, files.filter(f -> f.toString().endsWith(".db")).count(), "no second copy when up to date");
        }
        assertLeftAlone(file, "it was written by a newer Fourfold; use that one");
    }

    @Test
    void anEmptyFileBecomesAStore() throws IOException {
        Path file = Files.createFile(temporary.resolve("empty.db"));
        try (Store store = Store.open(file)) {
            assertEquals(List.of(), store.children());
        }
    }

    @Test
    void aFirstStartThatWasStoppedAnywhereIsBegunAnewAndNothingStaysOfIt() throws IOException {
        byte[] whole = Files.readAllBytes(MadeOnce.EMPTY.at(temporary.resolve("whole.db")));
        Path file = temporary.resolve("first.db");
        Path unfinished = temporary.resolve("first.db.new");
        for (int cut = 0; cut <= whole.length; cut += whole.length / 5) {
            Files.write(unfinished, Arrays.copyOf(whole, cut));
            Files.write(Journal.rollback(file), Arrays.copyOf(whole, cut));
            Store.open(file).close();
            assertEquals(List.of(), Verification.of(file), "cut at " + cut);
            try (Stream<Path> left = Files.list(temporary)) {
                assertEquals(
                        Set.of("first.db", "whole.db"),
                        left.map(f -> String.valueOf(f.getFileName())).collect(Collectors.toSet()));
            }
            Files.delete(file);
        }
    }

    @Test
    void ofProgramsThatBeginAtOnceOneMakesTheFileAndAllUseIt() throws Exception {
        Path file = temporary.resolve("first.db");
        List<Thread> programs = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            Child child = Invented.child(i, "N" + i);
            programs.add(new Thread(() -> {
                try (Store store = Store.open(file)) {
                    store.add(child);
                }
            }));
        }
        programs.forEach(Thread::start);
        for (Thread program : programs) {
            program.join();
        }
        try (Store store = Store.open(file)) {
            assertEquals(4, store.children().size());
        }
    }

    @Test
    void aControlCharacterInAFileNameNeverReachesTheTerminal() throws IOException {
        Path file = Files.writeString(temporary.resolve("a\u001b[31mb"), "text");
        String message = InEnglish.failure(() -> Store.open(file));
        assertTrue(message.contains("a?[31mb"), message);
        assertEquals(-1, message.indexOf(0x1b));
    }

    private static String asked(Database database, String pragma) {
        return database.read(
                        RecordsFailure.Task.READ_ANSWERS,
                        c -> Database.query(c, pragma, none -> {}, row -> row.getString(1)))
                .get(0);
    }

    private Path usual() {
        Path file = temporary.resolve("fourfold.db");
        Store.open(file).close();
        return file;
    }

    private static void assertLeftAlone(Path file, String reason) throws IOException {
        byte[] before = Files.readAllBytes(file);
        RecordsFailure refused = assertThrows(RecordsFailure.class, () -> StoreFile.open(file, SHORT, Schema.TODAY));
        assertEquals("could not open " + file + ": " + reason, Words.english().failure(refused));
        assertArrayEquals(before, Files.readAllBytes(file), "untouched");
    }

    /** Waits until the thread is inside a native call of the database library, where it can only wait for the lock. */
    private static void awaitInsideTheLibrary(Thread thread) {
        long deadline = System.nanoTime() + Duration.ofSeconds(10).toNanos();
        while (System.nanoTime() < deadline) {
            StackTraceElement[] stack = thread.getStackTrace();
            if (stack.length > 0 && stack[0].getClassName().startsWith("org.sqlite.") && stack[0].isNativeMethod()) {
                return;
            }
            Thread.onSpinWait();
        }
        throw new AssertionError("the second writer never began");
    }

    private static List<String> ask(Path file, String sql) throws SQLException {
        try (Connection connection = connect(file);
                Statement statement = connection.createStatement()) {
            if (sql.startsWith("SELECT") || (sql.startsWith("PRAGMA") && !sql.contains("application_id ="))) {
                return Database.query(connection, sql, none -> {}, row -> row.getString(1));
            }
            statement.executeUpdate(sql);
            return List.of();
        }
    }

    private static Connection connect(Path file) throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        return source.getConnection();
    }

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }

    private static boolean windows() {
        return System.getProperty("os.name", "").startsWith("Windows");
    }
}
