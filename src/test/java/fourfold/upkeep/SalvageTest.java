// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.store.Invented;
import fourfold.store.Store;
import fourfold.words.Words;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** Guards against one bad row that costs the others, or makes saving them take hours. */
class SalvageTest {
    private static final Child ANA = Invented.child(1, "Ana");

    @TempDir
    private Path folder;

    @Test
    void aRowThatIsRefusedCostsOnlyItselfAndNoTimeAndASecondChildOfThatNameGetsAnother() throws SQLException {
        Path file = folder.resolve("fourfold.db");
        List<DrillSession> sessions = new ArrayList<>();
        List<Answer> answers = new ArrayList<>();
        for (int number = 0; number < 40; number++) {
            DrillSession session = Invented.session(ANA, number);
            sessions.add(session);
            for (int position = 1; position <= 50; position++) {
                answers.add(Invented.answer(session, position));
            }
        }
        try (Store store = Store.open(file)) {
            store.add(ANA);
            store.keepAll(sessions, answers);
        }
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            // Another child of that name, which the program never lets be, with a drill and an answer.
            statement.execute(
                    "INSERT INTO child SELECT 2, '00000000-0000-4000-8000-00000000000b', 'ANA', created_at FROM child");
            statement.execute(
                    "INSERT INTO drill SELECT 99, '00000000-0000-4000-8000-00000000000c', 2, started_at, 0, 480, 1"
                            + " FROM drill WHERE nr = 1");
            statement.execute(
                    "INSERT INTO answer SELECT 99, 1, asked_at, 0, purpose, operation, left_number, right_number,"
                            + " typed, first_key_ms, whole_ms, 0, 1, pace, NULL FROM answer WHERE drill_nr = 1 AND position = 1");
            // An answer at a time that no table takes.
            statement.execute("PRAGMA ignore_check_constraints = ON");
            statement.execute("UPDATE answer SET asked_at = -1, checksum = NULL WHERE drill_nr = 40 AND position = 50");
        }
        long started = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Salvage salvage = Salvage.of(file, List.of(), folder.resolve("saved.db"), n -> "Nameless " + n);
        long took = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - started;
        assertEquals(
                new Salvage(
                        RowCounts.NONE
                                .plus(RowCounts.Kind.CHILD, 2)
                                .plus(RowCounts.Kind.DRILL, 41)
                                .plus(RowCounts.Kind.ANSWER, 2_000),
                        1),
                salvage);
        assertTrue(took < 10_000_000_000L, took + " ns of work");
        assertEquals(List.of(), Verification.of(folder.resolve("saved.db")));
        try (Store store = Store.open(folder.resolve("saved.db"))) {
            assertEquals(
                    List.of("Ana", "Nameless 2"),
                    store.children().stream().map(Child::name).toList());
        }
    }

    /** What stands in a file's own schema is run by whoever opens it; to salvage it nobody does. */
    @Test
    void aFileWhoseSchemaDoesHarmGivesItsRowsAndNothingElse() throws SQLException {
        Path file = folder.resolve("fourfold.db");
        DrillSession session = Invented.session(ANA, 1);
        try (Store store = Store.open(file)) {
            store.add(ANA);
            store.keepAll(List.of(session), List.of(Invented.answer(session, 1), Invented.answer(session, 2)));
        }
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TRIGGER t AFTER INSERT ON answer BEGIN DELETE FROM answer; END");
        }
        Path fresh = folder.resolve("saved.db");
        Salvage salvage = Salvage.of(file, List.of(), fresh, n -> "Nameless " + n);
        assertEquals(2, salvage.saved().of(RowCounts.Kind.ANSWER));
        assertEquals(List.of(), Verification.of(fresh));
        Salvage again = Salvage.of(file, List.of(file, fresh), folder.resolve("again.db"), n -> "Nameless " + n);
        assertEquals(salvage.saved(), again.saved());
        // As a backup it is of no help: it is passed over with one line, and the next is taken.
        assertEquals(1, again.passedOver().size());
        String told = Words.english().failure(again.passedOver().get(0));
        assertTrue(told.contains("it holds \"t\", which no Fourfold makes so"), told);
        assertTrue(told.lines().count() == 1 && told.contains("fourfold.db"), told);
    }
}
