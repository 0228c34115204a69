// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a level that a parent could not check by eye. A history is written as days and answers. */
class FactMasteryTest {
    private static final Duration LIMIT = Duration.ofSeconds(3);
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    /** Each answer is a day and a letter: r right and quick, l just at the limit, s slow, w wrong, v typed in view. */
    private static FactMastery after(String history) {
        FactMastery mastery = FactMastery.UNMET;
        int position = 1;
        for (String one : history.isBlank() ? new String[0] : history.strip().split("\\s+")) {
            int day = Integer.parseInt(one.substring(0, one.length() - 1));
            mastery = after(mastery, day, one.charAt(one.length() - 1), position++);
        }
        return mastery;
    }

    private static FactMastery after(FactMastery mastery, int day, char kind, int position) {
        Answer answer = new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), position),
                new Moment(START.plus(Duration.ofDays(day)).plusSeconds(position), 0),
                kind == 'v' ? Purpose.INTRODUCE : Purpose.PRACTISE,
                Question.product(7, 8),
                new Answer.Typing(kind == 'w' ? "54" : "56", Answer.Times.NONE, 0),
                Surface.TERMINAL);
        return mastery.after(answer, Optional.of(Duration.ofSeconds(kind == 's' ? 5 : kind == 'l' ? 3 : 2)), LIMIT);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "                                | NEW",
                "0v                              | ACQUIRING",
                "0r                              | ACQUIRING",
                // One day is not enough.
                "0r 0r 0r 0r 0r                  | ACQUIRING",
                "0s 0s 0s 1s                     | ACCURATE",
                "0w 0s 0s 1s 1s                  | ACCURATE",
                // Three of the last five.
                "0w 0w 0s 1s 1s                  | ACQUIRING",
                "0r 0r 0r 1r 1r                  | FLUENT",
                // The median is slow.
                "0s 0s 0s 1r 1r                  | ACCURATE",
                "0s 0s 1r 1r 1r                  | FLUENT",
                // Nine of the last ten.
                "0r 0r 0r 0r 0r 0r 1r 1w 1r 1r   | FLUENT",
                // A lapse, one step down.
                "0r 0r 0r 1r 1r 1w               | ACCURATE",
                "0r 0r 0r 1r 1r 1w 1w            | ACQUIRING",
                // Fluent on three days, once after a week.
                "0r 0r 0r 1r 1r 2r 9r            | LASTING",
                // The gap is only six days.
                "0r 0r 0r 1r 1r 2r 8r            | FLUENT",
                // Fluent on two days only.
                "0r 0r 0r 1r 1r 8r               | FLUENT",
                "0r 0r 0r 1r 1r 2r 9r 9w         | FLUENT",
                "0r 0r 0r 1r 1r 2r 9r 9w 9w      | ACCURATE",
                // Right after a week, but slow.
                "0r 0r 0r 1r 1r 2r 9s            | FLUENT",
                // The limit itself is quick.
                "0l 0l 0l 1l 1l                  | FLUENT",
                "0r 0r 0r 1r 1r 2r 9l            | LASTING",
                // After a lapse a quick answer lowers nothing, a slow one can cost fluency.
                "0r 0r 0r 1r 1r 2r 9r 9w 9l      | FLUENT",
                "0r 0r 0r 1r 1r 2r 9r 9w 9s      | ACCURATE",
                "0r 0r 0r 1r 1r 2s 2s 2s         | ACCURATE",
                // The last five are all of one day, and still a right answer makes nothing less than accurate.
                "0s 0s 0s 1s 1s 1s 1s 1s         | ACCURATE"
            })
    void levelsFollowTheRules(String history, Mastery level) {
        assertEquals(level, after(history == null ? "" : history).level());
    }

    @ParameterizedTest
    @CsvSource({
        // True accuracy, and the chance of passing each rule: exact binomial sums, computed with Python 3.11.
        ".50, .1875, .0312, .0107",
        ".70, .5282, .1681, .1493",
        ".80, .7373, .3277, .3758",
        ".90, .9185, .5905, .7361",
        ".95, .9774, .7738, .9139"
    })
    void theChanceOfPassingEachRuleIsTheBinomialOne(double p, double fourOfFive, double five, double nineOfTen) {
        double accurate = 0;
        double fluent = 0;
        for (int pattern = 0; pattern < 32; pattern++) {
            FactMastery mastery = FactMastery.UNMET;
            double chance = 1;
            for (int i = 0; i < 5; i++) {
                boolean right = (pattern >> i & 1) == 1;
                chance *= right ? p : 1 - p;
                mastery = after(mastery, i < 3 ? 0 : 1, right ? 'r' : 'w', i + 1);
            }
            accurate += Integer.bitCount(pattern) >= 4 && isAccurate(mastery) ? chance : 0;
            fluent += mastery.level().atLeast(Mastery.FLUENT) ? chance : 0;
        }
        double nine = 0;
        for (int pattern = 0; pattern < 1024; pattern++) {
            FactMastery mastery = FactMastery.UNMET;
            double chance = 1;
            for (int i = 0; i < 10; i++) {
                boolean right = (pattern >> i & 1) == 1;
                chance *= right ? p : 1 - p;
                mastery = after(mastery, i, right ? 'r' : 'w', i + 1);
            }
            nine += mastery.rightOfLast(10) >= 9 ? chance : 0;
        }
        assertEquals(fourOfFive, accurate, 6e-5);
        assertEquals(five, fluent, 6e-5);
        assertEquals(nineOfTen, nine, 6e-5);
    }

    private static boolean isAccurate(FactMastery mastery) {
        return mastery.level().atLeast(Mastery.ACCURATE);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0r              | 1",
                "0r 1r           | 3",
                "0r 1r 3r        | 7",
                "0r 1r 3r 7r     | 15",
                "0r 1r 3r 3w     | 4",
                "0r 0r 0r        | 1",
                "0r 1w 2r        | 4"
            })
    void gapsGrowAfterSuccessAndBeginAgainAfterAnError(String history, long dueDay) {
        long first = START.getEpochSecond() / 86_400;
        assertEquals(Optional.of(first + dueDay), after(history).dueDay());
    }

    /** Asked every three days no fact ever rests for a week: four weeks on end show as well that it lasts. */
    @ParameterizedTest
    @CsvSource({
        "0r 1r 4r 7r 10r 13r 16r 19r 22r 25r 28r 31r 34r, FLUENT",
        "0r 1r 4r 7r 10r 13r 16r 19r 22r 25r 28r 31r 34r 37r 40r, LASTING",
        "0r 1r 4r 7r 10r 13r 16r 19r 22r 25r 28r 31r 34r 37r 40r 43w, FLUENT",
        "0r 1r 4r 7r 10r 13r 16w 19r 22r 25r 28r 31r 34r 37r 40r 43r, FLUENT",
        "0r 1r 4r 7r 10r 13r 20r, LASTING"
    })
    void aFactIsLastingAfterAWeeksRestOrFourWeeksOfRegularPractice(String history, Mastery level) {
        assertEquals(level, after(history).level());
    }

    @Property(tries = 300)
    void aLevelNeverFallsByMoreThanOneStepAndNeverAfterAQuickRightAnswer(
            @ForAll @Size(max = 40) List<Boolean> answers, @ForAll @Size(40) List<Boolean> newDay) {
        FactMastery mastery = FactMastery.UNMET;
        int day = 0;
        for (int i = 0; i < answers.size(); i++) {
            day += newDay.get(i) ? 3 : 0;
            FactMastery next = after(mastery, day, answers.get(i) ? 'r' : 'w', i + 1);
            assertTrue(next.level().ordinal() >= mastery.level().ordinal() - 1);
            if (answers.get(i)) {
                assertTrue(next.level().atLeast(mastery.level()), mastery.level() + " to " + next.level());
            }
            mastery = next;
        }
    }

    @ParameterizedTest
    @CsvSource({"0r 0s 0w, 2", "0s, 5", "0s 0l 0r, 3", "0s 0l 0r 0s, 3", "0w, 0", "'', 0"})
    void theMedianIsATimeThatWasReallyTaken(String history, int seconds) {
        Optional<Duration> median = after(history).medianThinking();
        assertEquals(seconds == 0 ? Optional.empty() : Optional.of(Duration.ofSeconds(seconds)), median);
    }

    /** The last day's answers were all right and the first of them quick, and so many days lie between. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''              | 0",
                "0r              | 0",
                "3r 3r           | 0",
                "0r 3r           | 3",
                "0r 3l           | 3",
                "0w 3r           | 3",
                "0r 2r 7r 7r     | 5",
                "0r 3r 3s        | 3",
                "0r 3s           | 0",
                "0r 3s 3r        | 0",
                "0r 3w           | 0",
                "0r 3w 3r        | 0",
                "0r 3r 3w        | 0",
                // The day before is no longer among the last ten.
                "0r 3r 3r 3r 3r 3r 3r 3r 3r 3r 3r | 0",
                "0r 3r 3r 3r 3r 3r 3r 3r 3r 3r    | 3"
            })
    void aGapIsBridgedByADayThatBeginsQuicklyAndIsAllRight(String history, long days) {
        assertEquals(days, after(history).bridged(LIMIT));
    }

    @Test
    void whenItWasLastAskedIsWhenItLastCameFromMemory() {
        FactMastery unmet = after("0v");
        assertEquals(Optional.empty(), unmet.lastDay());
        assertEquals(7, unmet.lastDayOr(7));
        assertEquals(0, unmet.recent());
        FactMastery met = after("0r 2w 3v");
        long day = START.getEpochSecond() / 86_400 + 2;
        assertEquals(Optional.of(day), met.lastDay());
        assertEquals(day, met.lastDayOr(7));
        assertEquals(2, met.recent());
    }
}
