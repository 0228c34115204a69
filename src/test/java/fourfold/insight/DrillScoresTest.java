// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.History;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a drill's score that takes in another drill's answers, or what was typed with the answer in view. */
class DrillScoresTest {
    private static final UUID FIRST = new UUID(2, 1);
    private static final UUID SECOND = new UUID(2, 2);

    private static Answer answer(UUID drill, int position, Purpose purpose, Prompt prompt, String typed) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), drill, position),
                new Moment(History.START, 0),
                purpose,
                prompt,
                new Answer.Typing(typed, Answer.Times.NONE, 0),
                Surface.PLAIN);
    }

    @Test
    void onlyAnswersFromMemoryOfTheDrillItselfCount() {
        Question asked = Question.product(7, 8);
        DrillScores scores = new DrillScores();
        scores.accept(answer(FIRST, 1, Purpose.COPY, new NumberToCopy(38), "38"));
        scores.accept(answer(FIRST, 2, Purpose.PRACTISE, asked, "54"));
        scores.accept(answer(SECOND, 1, Purpose.PROBE, asked, "56"));
        scores.accept(answer(FIRST, 3, Purpose.INTRODUCE, asked, "56"));
        scores.accept(answer(FIRST, 4, Purpose.AGAIN, asked, "56"));
        scores.accept(answer(FIRST, 5, Purpose.PRACTISE, asked, ""));
        assertEquals(new DrillScores.Score(3, 1, Optional.empty()), scores.of(FIRST));
        assertEquals(new DrillScores.Score(1, 1, Optional.empty()), scores.of(SECOND));
        assertEquals(new DrillScores.Score(0, 0, Optional.empty()), scores.of(new UUID(2, 3)));
    }
}
