package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Answer;
import fourfold.facts.Child;
import fourfold.facts.Sitting;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against answers that are handed on in another order than they were kept in, twice, or not at all. */
class SideBySideTest {
    private static final Child MINA = Invented.child(1, "Mina");
    private static final int IN_A_DRILL = 300;

    @TempDir
    private Path folder;

    /** A batch holds 512, and sixteen of them wait before the reader does. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 511, 512, 513, 1024, 10_000})
    void everyAnswerIsHandedOnOnceAndInOrder(int number) {
        try (Store store = Store.open(folder.resolve("family.db"))) {
            List<Answer> kept = fill(store, number);
            assertEquals(kept, store.answers(MINA.id()));
        }
    }

    @Test
    void whatTheReceiverThrowsIsThrownAndNothingHangs() {
        try (Store store = Store.open(folder.resolve("family.db"))) {
            fill(store, 10_000);
            IllegalStateException own = new IllegalStateException("can't be folded");
            assertEquals(
                    own,
                    assertThrows(
                            IllegalStateException.class,
                            () -> store.readAnswers(MINA.id(), answer -> {
                                throw own;
                            })));
            assertEquals(10_000, store.answers(MINA.id()).size());
        }
    }

    @Test
    void aRowThatIsNoAnswerIsToldWithItsPlaceAndTheFile() {
        Path file = folder.resolve("family.db");
        try (Store store = Store.open(file)) {
            fill(store, 2_000);
            store.database().write("spoil a row", c -> {
                Database.run(c, "PRAGMA ignore_check_constraints = ON", none -> {});
                Database.run(
                        c,
                        "UPDATE answer SET purpose = 0, operation = 1, left_number = 3, right_number = 4"
                                + " WHERE position = 7 AND drill_nr = 6",
                        none -> {});
                return true;
            });
            StoreException told = assertThrows(StoreException.class, () -> store.answers(MINA.id()));
            String words = String.valueOf(told.getMessage());
            assertTrue(words.startsWith("could not read the answers in " + file + ": position 7 of the drill "), words);
        }
    }

    private static List<Answer> fill(Store store, int number) {
        store.add(MINA);
        List<Sitting> sittings = new ArrayList<>();
        List<Answer> answers = new ArrayList<>();
        for (int drill = 0; answers.size() < number; drill++) {
            Sitting sitting = Invented.sitting(MINA, drill);
            sittings.add(sitting);
            IntStream.rangeClosed(1, Math.min(IN_A_DRILL, number - answers.size()))
                    .forEach(i -> answers.add(Invented.answer(sitting, i)));
        }
        store.keepAll(sittings, answers);
        return answers;
    }
}
