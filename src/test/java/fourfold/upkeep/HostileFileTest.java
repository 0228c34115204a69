// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteDataSource;

/**
 * Guards against a file from elsewhere that does more than hold answers. Each kind ends in one line within ten seconds,
 * by every way in, and leaves the family's file and the folder for temporary files as they were.
 */
@Timeout(60)
class HostileFileTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final Child BO = Invented.child(2, "Bo");
    private static final Duration LONGEST = Duration.ofSeconds(10);
    private static final String NUMBERS =
            "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %s) ";
    private static final String ENDLESS =
            "CREATE VIEW act AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS nr,"
                    + " 'x' AS id, 1 AS child_nr, 1 AS made_at, 0 AS zone_offset_min, 'focus' AS kind, '1x1' AS detail FROM n";

    /** What a statement of ours could run: it ends a start before any is made. */
    private static final Pattern SHAPED =
            Pattern.compile("CREATE (TRIGGER|VIEW|VIRTUAL|INDEX)|ENDLESS|ADD COLUMN|UPDATE sqlite_schema");

    /** The kinds with the time each took and what was said: merge, preview, restore, verify, salvage, a start and a grid. */
    private static final List<String> TABLE = new ArrayList<>();

    @TempDir
    private Path folder;

    private Path family = Path.of("");
    private Path foreign = Path.of("");

    @TempDir
    private static Path made;

    @BeforeAll
    static void fill() {
        filled(made.resolve("family.db"), ANA);
        filled(made.resolve("foreign.db"), BO);
    }

    @BeforeEach
    void makeFiles() throws IOException {
        family = Files.copy(made.resolve("family.db"), folder.resolve("family.db"));
        foreign = Files.copy(made.resolve("foreign.db"), folder.resolve("foreign.db"));
    }

    private static void filled(Path file, Child child) {
        try (Store store = Store.open(MadeOnce.EMPTY.at(file))) {
            store.add(child);
            DrillSession session = Invented.session(child, child.id().getLeastSignificantBits() & 0xff);
            store.begin(session);
            for (int position = 1; position <= 3; position++) {
                store.keep(Invented.answer(session, position));
            }
        }
    }

    private void change(String sql) throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + foreign);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA ignore_check_constraints = ON");
            statement.execute("PRAGMA writable_schema = ON");
            for (String one : sql.split(";; ")) {
                statement.execute(one.replace("ENDLESS", ENDLESS)
                        .replace("NUMBERS", NUMBERS.formatted(150_000))
                        .replace("UUIDS", "printf('%08x-0000-4000-8000-000000000000', i)"));
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '→',
            quoteCharacter = '\u0001',
            value = {
                "a trigger → CREATE TRIGGER t AFTER INSERT ON answer BEGIN DELETE FROM answer; END → holds \"t\", which",
                "a view for a table → DROP TABLE removed_child;; CREATE VIEW removed_child AS SELECT 'x' AS id, 1 AS removed_at"
                        + " → holds \"removed_child\", which",
                "an endless view → DROP TABLE act;; ENDLESS → holds \"act\", which",
                "a history that is a view → DROP TABLE flyway_schema_history;; CREATE VIEW flyway_schema_history AS SELECT '1' AS"
                        + " version → its tables are not those",
                "a virtual table → CREATE VIRTUAL TABLE more USING fts5(text) → which no Fourfold makes so",
                "a generated column → ALTER TABLE gate ADD COLUMN more AS (length(hash)) → holds \"gate\", which",
                "an index that computes → CREATE INDEX i ON answer (abs(-9223372036854775808)) → integer overflow",
                "an index that computes, of no rows → CREATE INDEX i ON gate (abs(-9223372036854775808)) → holds \"i\", which",
                "a table too many → CREATE TABLE more (text TEXT) → holds \"more\", which",
                "a huge value → UPDATE child SET name = printf('%.*c', 5000000, 'x') → larger than any",
                "a huge value in the schema → CREATE TABLE more (a TEXT DEFAULT ('x')) ;; UPDATE sqlite_schema SET sql = 'CREATE"
                        + " TABLE more (a /*' || printf('%.*c', 5000000, 'x') || '*/)' WHERE name = 'more' → it ",
                "text for a number → UPDATE answer SET erasures = 'many' → it is damaged",
                "a fraction → UPDATE drill SET seed = 0.5 → row 1 of its table drill",
                "bytes for text → UPDATE answer SET typed = x'37' → row 1 of its table answer",
                "bytes in a name → UPDATE child SET name = x'4d696e61' → row 1 of its table child",
                "nothing where something must be → UPDATE sqlite_schema SET sql = replace(sql, 'name VARCHAR(80) NOT NULL', 'name"
                        + " VARCHAR(80)') WHERE name = 'child' → holds \"child\", which",
                "an id that is none → UPDATE child SET id = 'zzzzzzzz-0000-4000-8000-000000000001' → row 1 of its table child",
                "control characters → UPDATE child SET name = 'a' || char(27) || '[2J' → row 1 of its table child",
                "a number with no meaning → UPDATE answer SET surface = 9 → damaged",
                "an action with no meaning → INSERT INTO act VALUES (1, '00000000-0000-4000-8000-000000000009', 1, 1, 0, 'focus',"
                        + " '99x99') → row 1 of its table act",
                "a later name that is none → INSERT INTO act VALUES (1, '00000000-0000-4000-8000-000000000009', 1, 1, 0, 'choose',"
                        + " 'name=' || char(10)) → row 1 of its table act",
                "an answer of nobody's drill → UPDATE answer SET drill_nr = 77 WHERE position = 2 → row 2 of its table answer",
                "far too many actions → NUMBERS INSERT INTO act SELECT i, UUIDS, 1, 1, 0, 'focus', '1x1' FROM n"
                        + " → its table act has more than 100000 rows",
                "far too many names → NUMBERS INSERT INTO act SELECT i, UUIDS, 1, i, 0, 'choose', 'name=N' || i FROM n"
                        + " → its table act has more than 100000 rows",
                "a forged sign of ours → PRAGMA application_id = 7 → not a Fourfold file",
            })
    void endsInOneLineAndLeavesNothingBehind(String kind, String sql, String line) throws IOException, SQLException {
        try {
            change(sql);
        } catch (SQLException e) {
            // Some can't even be made; then what the library says is what the line is about.
            assertTrue(String.valueOf(e.getMessage()).contains(line), e.getMessage());
            return;
        }
        byte[] before = Files.readAllBytes(family);
        byte[] other = Files.readAllBytes(foreign);
        assertRefused(kind, line, () -> {
            try (Store store = Store.open(family)) {
                Merge.of(store, foreign, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
            }
        });
        assertRefused(kind, line, () -> {
            try (Store store = Store.open(family)) {
                Merge.preview(store, foreign, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
            }
        });
        assertRefused(kind, line, () -> Restoration.of(family, foreign));
        long started = work();
        Verification.of(foreign);
        assertQuick(started);
        TABLE.add("%-34s %6d ms  (verify)".formatted(kind, (work() - started) / 1_000_000));
        assertArrayEquals(before, Files.readAllBytes(family), kind);
        assertArrayEquals(other, Files.readAllBytes(foreign), kind);
        Path fresh = folder.resolve("saved.db");
        assertEnds(kind, "salvage", () -> Salvage.of(foreign, List.of(), fresh, number -> "N" + number));
        // What belongs to no drill is lost and counted so; that there is a gap is told for ever.
        assertTrue(
                !Files.exists(fresh)
                        || Verification.of(fresh).stream().allMatch(p -> p.reason() == Reason.ANSWER_MISSING),
                "salvage wrote what is not whole");
        // Named as the family's own, as --store would: its values are looked at when they are read, and by verify.
        String start = assertEnds(kind, "start", () -> Store.open(foreign).close());
        if (SHAPED.matcher(sql).find()) {
            assertFalse(start.equals("done"), "something of the file's own schema could run");
            assertArrayEquals(other, Files.readAllBytes(foreign), kind);
        }
        assertEnds(kind, "grid", () -> {
            try (Store store = Store.open(foreign)) {
                for (Child child : store.allChildren()) {
                    store.actions(child.id());
                    store.answers(child.id());
                }
            }
        });
    }

    /** It is done, or told in one line, and soon; gives what was told. */
    private static String assertEnds(String kind, String way, Executable work) {
        long started = work();
        String outcome = "done";
        try {
            work.execute();
        } catch (RecordsFailure e) {
            outcome = InEnglish.failure(() -> {
                throw e;
            });
        } catch (Throwable e) {
            throw new AssertionError(kind + ", " + way, e);
        }
        assertQuick(started);
        assertEquals(1, outcome.lines().count(), outcome);
        String told = outcome.replaceFirst("^.*?\\.db: ", "");
        TABLE.add("%-34s %6d ms  (%s) %s".formatted(kind, (work() - started) / 1_000_000, way, told));
        return told;
    }

    @AfterAll
    static void writeTable() throws IOException {
        Files.write(Files.createDirectories(Path.of("target")).resolve("hostile-files.txt"), TABLE);
    }

    private static void assertRefused(String kind, String line, Executable way) {
        long started = work();
        String told = InEnglish.failure(way);
        assertQuick(started);
        String outcome = told.substring(told.indexOf(".db: ") + 5);
        TABLE.add("%-34s %6d ms  %s".formatted(kind, (work() - started) / 1_000_000, outcome));
        assertEquals(1, told.lines().count(), told);
        assertTrue(told.contains(line), told);
        assertTrue(told.length() < 400, told);
        for (String never : List.of("Exception", "[SQLITE", "null")) {
            assertFalse(told.contains(never), told);
        }
    }

    /** Time that this thread worked: other programs of the computer don't count. A hang would be found by the timeout. */
    private static long work() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void assertQuick(long started) {
        Duration took = Duration.ofNanos(work() - started);
        assertTrue(took.compareTo(LONGEST) < 0, took.toString());
    }

    @Test
    void aFileInAnotherEncodingIsTakenInAsOurs() throws IOException, SQLException {
        Path utf16 = folder.resolve("utf16.db");
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + utf16);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA encoding = 'UTF-16le'");
            statement.execute("PRAGMA application_id = 1181709682");
        }
        try (Store store = Store.open(utf16)) {
            store.add(Invented.child(3, "Zoë"));
        }
        try (Store store = Store.open(family)) {
            Merge.of(store, utf16, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
            assertEquals(2, store.children().size());
        }
    }

    @Test
    void aFileWithManyRowsThatAFamilyCouldHaveIsTakenInQuickly() throws SQLException {
        change("NUMBERS INSERT INTO act SELECT i, UUIDS, 1, i, 0, 'choose', 'name=N' || i FROM n LIMIT 99999");
        long started = work();
        try (Store store = Store.open(family)) {
            Merge.of(store, foreign, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
            assertEquals("N99999", store.children().get(1).name());
        }
        assertQuick(started);
    }

    @Test
    void whatAKilledProgramLeftInTheFolderForTemporaryFilesGoesAtTheNextStart() throws IOException {
        Path left = Files.createTempDirectory("fourfold-copy");
        Files.writeString(left.resolve("in-use"), "");
        Files.copy(foreign, left.resolve("copy.db"));
        try (PrivateFolder used = PrivateFolder.make()) {
            assertFalse(Files.exists(left), "a copy of a family's answers stayed behind");
            PrivateFolder.clearLeftBehind();
            assertTrue(Files.exists(used.file("in-use")), "a folder in use was taken away");
        }
    }
}
