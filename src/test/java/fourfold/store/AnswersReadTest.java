// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.words.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against answers that are handed on in another order than they were kept in, twice, or not at all. */
class AnswersReadTest {
    private static final Child MINA = Invented.child(1, "Mina");
    private static final int IN_A_DRILL = 300;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 1_999, 2_000, 2_001, 6_500})
    void everyAnswerIsHandedOnOnceAndInOrder(int number) {
        try (Store store = Store.open(folder.resolve("family.db"))) {
            List<Answer> kept = fill(store, number);
            assertEquals(kept, store.answers(MINA.id()));
        }
    }

    @Test
    void whatTheReceiverThrowsIsThrownAndTheStoreGoesOn() {
        try (Store store = Store.open(folder.resolve("family.db"))) {
            fill(store, 5_000);
            UUID late = Invented.session(MINA, 3_000 / IN_A_DRILL).id();
            IllegalStateException own = new IllegalStateException("can't be folded");
            assertEquals(
                    own,
                    assertThrows(
                            IllegalStateException.class,
                            () -> store.readAnswers(MINA.id(), answer -> {
                                if (answer.drill().equals(late)) {
                                    throw own;
                                }
                            })));
            assertEquals(5_000, store.answers(MINA.id()).size());
        }
    }

    @Test
    void aRowThatIsNoAnswerIsToldWithItsPlaceAndTheFile() {
        Path file = folder.resolve("family.db");
        try (Store store = Store.open(file)) {
            fill(store, 2_000);
            store.database().write(RecordsFailure.Task.KEEP_ANSWERS, c -> {
                Database.run(c, "PRAGMA ignore_check_constraints = ON", none -> {});
                Database.run(
                        c,
                        "UPDATE answer SET purpose = 0, operation = 1, left_number = 3, right_number = 4"
                                + " WHERE position = 7 AND drill_nr = 6",
                        none -> {});
                return true;
            });
            RecordsFailure told = assertThrows(RecordsFailure.class, () -> store.answers(MINA.id()));
            String words = String.valueOf(Words.english().failure(told));
            assertTrue(words.startsWith("could not read the answers in " + file + ": position 7 of the drill "), words);
        }
    }

    /** Each column cut to the 32 bits of an int would be a value that an answer may have. */
    @ParameterizedTest
    @ValueSource(
            strings = {"position", "zone_offset_min", "purpose", "operation", "left_number", "erasures", "surface"})
    void aNumberTooLargeIsRefusedAndNeverCutOff(String column) {
        try (Store store = Store.open(folder.resolve("family.db"))) {
            fill(store, 20);
            store.database().write(RecordsFailure.Task.KEEP_ANSWERS, c -> {
                Database.run(c, "PRAGMA ignore_check_constraints = ON", none -> {});
                Database.run(
                        c,
                        "UPDATE answer SET " + column + " = COALESCE(" + column
                                + ", 0) + 4294967296, checksum = NULL WHERE position = 7",
                        none -> {});
                return true;
            });
            RecordsFailure told = assertThrows(RecordsFailure.class, () -> store.answers(MINA.id()));
            assertTrue(
                    String.valueOf(Words.english().failure(told)).contains(" can't be read: "),
                    Words.english().failure(told));
        }
    }

    private static List<Answer> fill(Store store, int number) {
        store.add(MINA);
        List<DrillSession> sessions = new ArrayList<>();
        List<Answer> answers = new ArrayList<>();
        for (int drill = 0; answers.size() < number; drill++) {
            DrillSession session = Invented.session(MINA, drill);
            sessions.add(session);
            IntStream.rangeClosed(1, Math.min(IN_A_DRILL, number - answers.size()))
                    .forEach(i -> answers.add(Invented.answer(session, i)));
        }
        store.keepAll(sessions, answers);
        return answers;
    }
}
