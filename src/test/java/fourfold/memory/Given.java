// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/** Answers for tests: whose times are the default hands' and a stated time of thinking. */
final class Given {
    static final Instant START = Instant.parse("2027-01-04T16:00:00Z");
    private static final UUID CHILD = new UUID(1, 1);
    private static final UUID DRILL = new UUID(2, 2);

    private Given() {}

    static Answer right(Question question, Instant at, double thinkingSeconds) {
        return answer(question, at, Integer.toString(question.expected()), thinkingSeconds, Purpose.PRACTISE);
    }

    static Answer wrong(Question question, Instant at, double thinkingSeconds) {
        return answer(question, at, Integer.toString(question.expected() + 1), thinkingSeconds, Purpose.PRACTISE);
    }

    static Answer shown(Question question, Instant at) {
        return answer(question, at, Integer.toString(question.expected()), 1, Purpose.INTRODUCE);
    }

    static Answer missing(Question question, Instant at) {
        return new Answer(
                new Answer.Place(CHILD, DRILL, 1),
                new Moment(at, 0),
                Purpose.PRACTISE,
                question,
                new Answer.Typing("", new Answer.Times(Optional.empty(), Optional.of(Duration.ofSeconds(20))), 0),
                Surface.TERMINAL);
    }

    static Answer answer(Question question, Instant at, String typed, double thinkingSeconds, Purpose purpose) {
        MotorTime hands = MotorTime.unknown();
        Duration thinking = Duration.ofMillis(Math.round(thinkingSeconds * 1000));
        return timed(
                question,
                at,
                typed,
                purpose,
                hands.firstKey(question.expected(), Surface.TERMINAL).plus(thinking),
                hands.whole(question.expected(), Surface.TERMINAL).plus(thinking));
    }

    static Answer copy(int number, Instant at, long firstKeyMillis, long wholeMillis) {
        return timed(
                new NumberToCopy(number),
                at,
                Integer.toString(number),
                Purpose.COPY,
                Duration.ofMillis(firstKeyMillis),
                Duration.ofMillis(wholeMillis));
    }

    static Answer timed(Prompt prompt, Instant at, String typed, Purpose purpose, Duration first, Duration whole) {
        return new Answer(
                new Answer.Place(CHILD, DRILL, 1),
                new Moment(at, 0),
                purpose,
                prompt,
                new Answer.Typing(typed, new Answer.Times(Optional.of(first), Optional.of(whole)), 0),
                Surface.TERMINAL);
    }
}
