// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.NumberToCopy;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a drill that forgets what was asked in it, or how long it has lasted. */
class DrillSoFarTest {
    private static final DrillSoFar BEGUN = DrillSoFar.begun(
            new DrillSession(new UUID(2, 2), new UUID(1, 1), History.START, 0, Duration.ofMinutes(8), 1));

    private static Answer copy() {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), 1),
                new Moment(History.START, 0),
                Purpose.COPY,
                new NumberToCopy(42),
                new Answer.Typing("42", new Answer.Times(Optional.empty(), Optional.empty()), 0),
                Surface.TERMINAL);
    }

    private static Answer only(Question question, String written) {
        return new History().asked(question, written).answers().get(0);
    }

    @Test
    void everyAnswerIsThereInItsPlaceWithWhatItWas() {
        List<Answer> answers = List.of(
                copy(),
                only(Question.product(10, 10), "0v"),
                only(Question.product(7, 6), "0r"),
                only(Question.quotient(fourfold.facts.Family.of(10, 9), 10), "0w"));
        DrillSoFar drill = BEGUN;
        for (Answer answer : answers) {
            drill = drill.after(answer);
        }
        assertEquals(4, drill.size());
        assertEquals(2, drill.turns());
        assertEquals(answers, drill.answers());
        List<Answer> backwards = new ArrayList<>();
        drill.newestFirst().forEach(backwards::add);
        assertEquals(List.of(answers.get(3), answers.get(2), answers.get(1), answers.get(0)), backwards);
        assertEquals(Optional.of(answers.get(3)), drill.last());
        assertEquals(-1, drill.traceAt(0));
        for (int place = 1; place < 4; place++) {
            assertEquals(answers.get(place).question().orElseThrow().traceIndex(), drill.traceAt(place));
        }
        assertFalse(drill.wasRightAt(0) || drill.wasRightAt(3));
        assertTrue(drill.wasRightAt(1) && drill.wasRightAt(2));
        assertTrue(drill.wasInViewAt(1));
        assertFalse(drill.wasInViewAt(0) || drill.wasInViewAt(2) || drill.wasInViewAt(3));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0, false",
        "479, 0, 479, false",
        "480, 0, 480, true",
        "480, 1, 479, false",
        "540, 60, 480, true",
        "-5, 0, 0, false"
    })
    void pausesAreNoPractice(int seconds, int paused, int practised, boolean over) {
        DrillSoFar drill = BEGUN.pausedFor(Duration.ofSeconds(paused));
        assertEquals(Duration.ofSeconds(practised), drill.practised(History.START.plusSeconds(seconds)));
        assertEquals(over, drill.isOver(History.START.plusSeconds(seconds)));
    }

    @Test
    void answersAndPausesAddUp() {
        DrillSoFar drill = BEGUN.pausedFor(Duration.ofSeconds(10))
                .after(only(Question.product(6, 7), "0r"))
                .pausedFor(Duration.ofSeconds(20));
        assertEquals(1, drill.size());
        assertEquals(1, drill.turns());
        assertEquals(Duration.ofSeconds(30), drill.practised(History.START.plusSeconds(60)));
        assertEquals(0, BEGUN.size());
    }
}
