// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards the counts of a drill as a sequence, and of how long a child waits, against plain examples. */
class DrillSequenceTest {
    private static final Instant START = Instant.parse("2026-09-01T15:00:00Z");
    private static final Question PRODUCT = Question.product(3, 4);

    /** One answer every ten seconds. */
    private static final class Drill {
        private final List<Answer> answers = new ArrayList<>();

        Drill add(Prompt prompt, Purpose purpose, boolean right) {
            Duration first = Duration.ofSeconds(1);
            String typed = Integer.toString(prompt.expected() + (right ? 0 : 1));
            answers.add(new Answer(
                    new Answer.Place(new UUID(1, 1), new UUID(2, 2), answers.size() + 1),
                    new Moment(START.plusSeconds(10L * answers.size()), 0),
                    purpose,
                    prompt,
                    new Answer.Typing(typed, new Answer.Times(Optional.of(first), Optional.of(first)), 0),
                    Surface.TERMINAL));
            return this;
        }

        DrillSequence told(long seconds) {
            return DrillSequence.of(answers, START.plusSeconds(seconds));
        }
    }

    /** Letters stand for questions. Expected values were computed by another program, written in another language. */
    @ParameterizedTest
    @CsvSource({
        "'', 0",
        "A, 0",
        "AAAA, 4",
        "ABAB, 4",
        "ABABA, 5",
        "ABCABD, 0",
        "ABCDABCD, 8",
        "XABCABCABCY, 9",
        "ABCDEABXDE, 0",
        "ABCABCDEDEDEDE, 8",
        "ABCDEFGHIJKLMNOPQRSTABCDEFGHIJKLMNOPQRST, 40",
        "ABCDEFGHIJKLMNOPQRSTUVABCDEFGHIJKLMNOPQRSTUV, 0",
    })
    void theLongestStretchThatRepeatsItselfIsOneBlockOfTwoToTwentySaidAtLeastTwice(String asked, int longest) {
        List<Integer> letters = asked.chars().boxed().toList();
        assertEquals(longest, DrillSequence.longestCycle(letters));
    }

    @Test
    void puttingAnErrorRightIsNoLessonAndATriedTypingIsNoSecondOne() {
        DrillSequence told = new Drill()
                .add(new NumberToCopy(7), Purpose.COPY, true)
                .add(PRODUCT, Purpose.PRACTISE, false)
                .add(PRODUCT, Purpose.INTRODUCE, false)
                .add(PRODUCT, Purpose.INTRODUCE, true)
                .add(Question.product(2, 5), Purpose.INTRODUCE, false)
                .add(Question.product(2, 5), Purpose.INTRODUCE, true)
                .add(Question.product(5, 2), Purpose.INTRODUCE, true)
                .add(PRODUCT, Purpose.AGAIN, true)
                .told(600);
        assertEquals(new DrillSequence(2, 1, 2, 0, 1, 0, true), told);
    }

    @Test
    void aFamilyAskedFirstAndNotKnownIsTaughtOnce() {
        DrillSequence told = new Drill()
                .add(PRODUCT, Purpose.PROBE, false)
                .add(PRODUCT, Purpose.INTRODUCE, true)
                .add(PRODUCT, Purpose.INTRODUCE, true)
                .add(PRODUCT.turnAround(), Purpose.INTRODUCE, true)
                .told(600);
        assertEquals(new DrillSequence(1, 0, 1, 0, 1, 0, false), told);
    }

    @ParameterizedTest
    @CsvSource({"119, 1", "120, 0"})
    void aLessonIsLateIfItBeginsInTheLastTwoMinutes(long secondsAfter, int late) {
        assertEquals(
                late,
                new Drill()
                        .add(PRODUCT, Purpose.INTRODUCE, true)
                        .told(secondsAfter)
                        .lateLessons());
    }

    private static void drill(Waits waits, long day, Question question, int right, IntPredicate fluent) {
        List<Answer> answers = new Drill().add(question, Purpose.PRACTISE, true).answers;
        waits.take(day, answers, new DrillSequence(100, right, 1, 0, 0, 0, true), fluent);
    }

    @Test
    void waitingCountsOnlyFromThreeDrillsOfNineInTenRightAndEndsWithANewFamily() {
        Waits waits = new Waits();
        for (int day = 0; day < 8; day++) {
            drill(waits, day, PRODUCT, day == 4 ? 0 : 95, f -> false);
        }
        // Drills 3 and 4 are waited through; 5 to 7 look back on the one with nothing right.
        assertEquals(2, waits.longest());
        drill(waits, 8, Question.product(6, 7), 95, f -> false);
        drill(waits, 9, PRODUCT, 95, f -> false);
        assertEquals(2, waits.longest());
        assertEquals(2, waits.met());
    }

    @ParameterizedTest
    @CsvSource({"true, 20, 17", "false, 15, 12"})
    void waitingReadyCountsOnlyWhileWhatWasMetTwoWeeksAgoIsFluent(boolean fluent, int drills, int longest) {
        Waits waits = new Waits();
        for (int day = 0; day < 20; day++) {
            drill(waits, day, PRODUCT, 90, f -> fluent);
        }
        assertEquals(17, waits.longest());
        assertEquals(longest, waits.longestReady(), () -> "of " + drills + " drills, the first three aside");
    }
}
