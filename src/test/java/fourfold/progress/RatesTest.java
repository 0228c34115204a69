// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a rate that scores digits in the wrong place or mixes the two operations. */
class RatesTest {
    @ParameterizedTest
    @CsvSource({
        // Digits in place, as facts are scored in curriculum-based measurement (slides after Fuchs 2005); lining typed
        // answers up at the ones' place is our own working of it.
        "56,56,2",
        "54,56,1",
        "6,56,1",
        "5,56,0",
        "65,56,0",
        "560,56,0",
        "'',56,0",
        "100,100,3",
        "8,8,1",
        "7,8,0"
    })
    void digitsCountWhenTheyAreRightInTheirPlace(String typed, int expected, int digits) {
        assertEquals(digits, Rates.digitsCorrect(typed, expected));
    }

    @Test
    void thirtyFiveDigitsInEightyFourSecondsAreTwentyFiveAMinute() {
        // 60 · 35 / 84 = 25, worked by hand.
        assertEquals(25.0, Rates.perMinute(35, 84_000), 1e-12);
    }

    @Test
    void productsAndQuotientsAreNeverMixed() {
        List<Answer> answers = List.of(
                answer(1, Question.product(7, 8), "56", 3000, Purpose.PRACTISE),
                answer(2, new Question(Operation.DIVIDE, 56, 8), "7", 2000, Purpose.PRACTISE),
                answer(3, Question.product(3, 4), "21", 3000, Purpose.AGAIN),
                answer(4, Question.product(3, 4), "12", 1000, Purpose.INTRODUCE));
        Rates products = Rates.of(answers, Operation.MULTIPLY);
        assertEquals(2, products.answers());
        assertEquals(20.0, products.digitsPerMinute(), 1e-12, "two digits in six seconds");
        assertEquals(10.0, products.factsPerMinute(), 1e-12);
        assertEquals(30.0, Rates.of(answers, Operation.DIVIDE).digitsPerMinute(), 1e-12);
    }

    @Test
    void noAnswersMakeNoRate() {
        assertEquals(new Rates(0, 0, 0), Rates.of(List.of(), Operation.DIVIDE));
    }

    private static Answer answer(int position, Question question, String typed, long millis, Purpose purpose) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), position),
                new Moment(Instant.parse("2026-03-02T08:00:00Z"), 0),
                purpose,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                Optional.of(Duration.ofMillis(millis - 300)), Optional.of(Duration.ofMillis(millis))),
                        0),
                Surface.TERMINAL);
    }
}
