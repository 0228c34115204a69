// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.store.Database;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import fourfold.words.Words;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * Guards the file against other hands: SQLite itself takes text in number columns and ignores lengths, so each check in
 * the schema is tried with a value that must not get in. Also reads the log as a person with plain SQL would.
 */
class ChecksTest {
    @TempDir
    private Path folder = Path.of("");

    private final Child ana = Invented.child(1, "Ana");
    private final DrillSession session = Invented.session(ana, 1);

    @BeforeEach
    void fill() {
        try (Store store = Store.open(MadeOnce.EMPTY.at(file()))) {
            store.add(ana);
            store.begin(session);
        }
    }

    @Test
    void aRowAsTheStoreWritesItIsTaken() throws SQLException {
        insert("1, 5, 1000, 60, 2, 2, 56, 7, '08', 900, 1200, 0, 1");
        try (Store store = Store.open(file())) {
            Answer answer = store.answers(ana.id()).get(0);
            assertEquals("56 ÷ 7", answer.prompt().toString());
            assertEquals("08", answer.typed());
            assertTrue(answer.isCorrect());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "9, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1", // no such drill
                "NULL, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1",
                "1, 0, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1", // positions begin at 1
                "1, 10001, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1",
                "1, 'x', 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1",
                "1, 1, -1, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1", // before 1970
                "1, 1, 'noon', 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1",
                "1, 1, 1000, 1081, 2, 1, 6, 7, '42', 900, 1200, 0, 1", // no such zone
                "1, 1, 1000, 60, 8, 1, 6, 7, '42', 900, 1200, 0, 1", // no such purpose
                "1, 1, 1000, 60, 5, 1, 6, 7, '42', 900, 1200, 0, 4", // nobody presses a key on paper
                "1, 1, 1000, 60, 7, 1, 6, 7, '42', 900, NULL, 0, 5",
                "1, 1, 1000, 60, 0, 1, 6, 7, '42', 900, 1200, 0, 1", // a question is not copied
                "1, 1, 1000, 60, 2, NULL, 6, NULL, '42', 900, 1200, 0, 1", // a number to copy is not practised
                "1, 1, 1000, 60, 2, NULL, 6, 7, '42', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 0, NULL, 101, NULL, '42', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 1, 11, 7, '42', 900, 1200, 0, 1", // beyond 10 x 10
                "1, 1, 1000, 60, 2, 2, 57, 7, '8', 900, 1200, 0, 1", // no whole result
                "1, 1, 1000, 60, 2, 2, 77, 7, '8', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 2, 0, 7, '8', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 2, 8, 0, '8', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 3, 6, 7, '42', 900, 1200, 0, 1", // no such operation
                "1, 1, 1000, 60, 2, 1, 6, 7, '', 900, 1200, 0, 1", // nothing typed is NULL
                "1, 1, 1000, 60, 2, 1, 6, 7, '12345', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '4a', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '-4', 900, 1200, 0, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', -1, 1200, 0, 1", // before the question
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1000000001, 0, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 'slow', 0, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, -1, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, NULL, 1",
                "1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 6" // no such surface
            })
    void anImpossibleAnswerIsKeptOut(String row) {
        assertThrows(SQLException.class, () -> insert(row));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "INSERT INTO child (id, name, created_at) VALUES ('short', 'Bo', 1)",
                "INSERT INTO child (id, name, created_at) VALUES (NULL, 'Bo', 1)",
                "INSERT INTO child (id, name, created_at) VALUES ('00000000-0000-0000-0000-00000000000b', '', 1)",
                "INSERT INTO child (id, name, created_at) VALUES ('00000000-0000-0000-0000-00000000000b', 'Bo', 'now')",
                "INSERT INTO drill (id, child_nr, started_at, zone_offset_min, planned_s, seed)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 9, 1, 0, 480, 1)",
                "INSERT INTO drill (id, child_nr, started_at, zone_offset_min, planned_s, seed)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 1, 1, 0, 59, 1)",
                "INSERT INTO drill (id, child_nr, started_at, zone_offset_min, planned_s, seed)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 1, 1, 0, 480, 'x')",
                "INSERT INTO answer (drill_nr, position, asked_at, zone_offset_min, purpose, operation, left_number,"
                        + " right_number, erasures, surface, pace) VALUES (1, 1, 1000, 0, 2, 1, 6, 7, 0, 1, 1)",
                "INSERT INTO answer (drill_nr, position, asked_at, zone_offset_min, purpose, operation, left_number,"
                        + " right_number, erasures, surface, pace) VALUES (1, 1, 1000, 0, 7, 1, 6, 7, 0, 5, 3)",
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 1, 1, 0, 'praise', '6x7')",
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 1, 1, 0, 'focus', '')",
                "INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail)"
                        + " VALUES ('00000000-0000-0000-0000-00000000000b', 2, 1, 0, 'focus', '6x7')",
                "DELETE FROM child",
                "DELETE FROM drill WHERE nr IN (SELECT drill_nr FROM answer)"
            })
    void anImpossibleChildDrillOrActIsKeptOutAndNothingLosesItsOwner(String statement) throws SQLException {
        insert("1, 1, 1000, 60, 2, 1, 6, 7, '42', 900, 1200, 0, 1");
        assertThrows(SQLException.class, () -> run(statement));
    }

    @Test
    void plainSqlShowsTheLogInWords() throws SQLException {
        insert("1, 1, 1767225599999, 0, 0, NULL, 38, NULL, '38', 900, 1200, 0, 1");
        insert("1, 2, 1767225599999, 60, 2, 1, 6, 7, '42', 900, 1200, 1, 2");
        insert("1, 3, 1767225599999, -60, 3, 2, 56, 7, '9', 900, 1200, 0, 3");
        insert("1, 4, 1767225599999, 0, 4, 2, 56, 7, NULL, NULL, NULL, 0, 3");
        try (Store store = Store.open(file())) {
            store.keep(Invented.action(ana, 1, new ParentAction.Choose("name", "Anna")));
            store.keep(Invented.action(ana, 2, new ParentAction.Choose("name", "Anouk")));
            store.keep(Invented.action(ana, 3, new ParentAction.Undo(Invented.id(2_000_002))));
        }
        assertEquals(
                List.of(
                        "Anna 1 2025-12-31 23:59:59 copy copy 38 38 38 right terminal",
                        "Anna 2 2026-01-01 00:59:59 practise 6 x 7 42 42 right window",
                        "Anna 3 2025-12-31 22:59:59 again 56 / 7 8 9 wrong plain",
                        "Anna 4 2025-12-31 23:59:59 probe 56 / 7 8 - none plain"),
                rows("SELECT nickname || ' ' || position || ' ' || local_time || ' ' || purpose || ' ' || asked || ' '"
                        + " || expected || ' ' || COALESCE(typed, '-') || ' ' || outcome || ' ' || surface"
                        + " FROM answer_log ORDER BY position"));
    }

    @ParameterizedTest
    @CsvSource({"0,0", "951782399000,0", "951868800000,0", "4107542399000,0", "1772323199000,-720", "1772323199000,840"
    })
    void theLocalTimeIsThatOfTheCalendar(long asked, int zone) throws SQLException {
        // The outside source is java.time's calendar: year ends, leap days of 2000, the missing one of 2100.
        for (int day = 0; day < 400; day += 61) {
            long moment = asked + day * 86_400_000L;
            run("DELETE FROM answer");
            insert("1, 1, " + moment + ", " + zone + ", 2, 1, 6, 7, '42', 900, 1200, 0, 1");
            String calendar = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss")
                    .format(java.time.Instant.ofEpochMilli(moment).atOffset(ZoneOffset.ofTotalSeconds(zone * 60)));
            assertEquals(List.of(calendar), rows("SELECT local_time FROM answer_log"));
        }
    }

    @Test
    void aValueThatCanNotBeReadIsNamedAndNothingCrashes() throws SQLException {
        // Another hand put in what the checks let through: the detail of an action is free text.
        run("INSERT INTO act (id, child_nr, made_at, zone_offset_min, kind, detail)"
                + " VALUES ('00000000-0000-0000-0000-00000000000b', 1, 1, 0, 'focus', '6x77')");
        try (Store store = Store.open(file())) {
            RecordsFailure refused = assertThrows(RecordsFailure.class, () -> store.actions(ana.id()));
            assertEquals(
                    "could not read the changes in " + file()
                            + ": the action 00000000-0000-0000-0000-00000000000b can't be read: "
                            + "nothing is meant by \"focus\" and \"6x77\"",
                    Words.english().failure(refused));
            assertEquals(List.of(ana), store.children());
            assertEquals(List.of(), store.actions(UUID.randomUUID()));
        }
    }

    private Path file() {
        return folder.resolve("family.db").toAbsolutePath();
    }

    private void insert(String row) throws SQLException {
        run("INSERT INTO answer (drill_nr, position, asked_at, zone_offset_min, purpose, operation, left_number,"
                + " right_number, typed, first_key_ms, whole_ms, erasures, surface) VALUES (" + row + ")");
    }

    private void run(String sql) throws SQLException {
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    private List<String> rows(String sql) throws SQLException {
        try (Connection connection = connect()) {
            return Database.query(connection, sql, none -> {}, row -> row.getString(1));
        }
    }

    private Connection connect() throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.enforceForeignKeys(true);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file());
        return source.getConnection();
    }
}
