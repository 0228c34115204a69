// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.History;
import fourfold.progress.Rates;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a one-minute timing that takes in answers of another one. */
class TimingsTest {
    private static Answer answer(Question question, Purpose purpose, int day, String typed) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, day), 1),
                new Moment(History.START.plus(Duration.ofDays(day)), 0),
                purpose,
                question,
                new Answer.Typing(
                        typed,
                        new Answer.Times(Optional.of(Duration.ofSeconds(1)), Optional.of(Duration.ofSeconds(3))),
                        0),
                Surface.TERMINAL);
    }

    @Test
    void eachTimingIsOneDrillAndEveryOtherAnswerIsLeftOut() {
        Question product = Question.product(7, 8);
        Question quotient = new Question(Operation.DIVIDE, 56, 8);
        Timings timings = new Timings();
        timings.accept(answer(product, Purpose.PRACTISE, 0, "56"));
        timings.accept(answer(product, Purpose.TIMED, 1, "56"));
        timings.accept(answer(product, Purpose.TIMED, 1, "54"));
        timings.accept(answer(quotient, Purpose.TIMED, 2, "7"));
        timings.accept(answer(product, Purpose.AGAIN, 2, "56"));
        timings.accept(answer(product, Purpose.TIMED, 3, "56"));
        // 7 × 8: three digits and one fact in six seconds, then two digits in three; 56 ÷ 8: one digit in three.
        assertEquals(
                List.of(
                        new Timings.OneMinute(History.FIRST_DAY + 1, Operation.MULTIPLY, new Rates(30, 10, 2)),
                        new Timings.OneMinute(History.FIRST_DAY + 3, Operation.MULTIPLY, new Rates(40, 20, 1))),
                timings.of(Operation.MULTIPLY));
        assertEquals(
                List.of(new Timings.OneMinute(History.FIRST_DAY + 2, Operation.DIVIDE, new Rates(20, 20, 1))),
                timings.of(Operation.DIVIDE));
        assertEquals(List.of(), new Timings().of(Operation.DIVIDE));
    }
}
