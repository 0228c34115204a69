package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fourfold.facts.Answer;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against answers that are folded in another order than they were read in, twice, or not at all. */
class SideBySideTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 511, 512, 513, 1024, 100_000})
    void everyAnswerIsFoldedOnceAndInOrder(int number) {
        List<Answer> three = Practised.answers().subList(0, 3);
        List<Answer> read = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            read.add(three.get(i % 3));
        }
        List<Answer> folded = new ArrayList<>();
        SideBySide both = new SideBySide(folded::add);
        read.forEach(both);
        both.finish();
        assertEquals(read, folded);
    }

    @Test
    void whatTheFoldThrowsIsThrownAndNothingHangs() {
        SideBySide both = new SideBySide(answer -> {
            throw new IllegalStateException("can't be folded");
        });
        Answer answer = Practised.answers().get(0);
        for (int i = 0; i < 50_000; i++) {
            both.accept(answer);
        }
        assertEquals(
                "can't be folded",
                assertThrows(IllegalStateException.class, both::finish).getMessage());
    }
}
