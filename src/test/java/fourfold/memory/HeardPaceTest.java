// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.History;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a heard answer that is taken for a measured one, and against a page that says more than it knows. */
class HeardPaceTest {
    private static final Question ASKED = Question.product(6, 7);

    /**
     * q heard at once, s heard after thinking, w not right; p on paper and right, x on paper and not right; t right on a
     * page that took five seconds for each answer, l right on one that took six.
     */
    private static Answer given(int day, char how, int position) {
        boolean paper = "pxtl".indexOf(how) >= 0;
        Answer.Times times = how == 'q'
                ? Answer.Times.heard(Answer.Pace.QUICK)
                : how == 's'
                        ? Answer.Times.heard(Answer.Pace.SLOW)
                        : how == 't' || how == 'l'
                                ? new Answer.Times(
                                        Optional.empty(), Optional.of(Duration.ofSeconds(how == 't' ? 5 : 6)))
                                : Answer.Times.NONE;
        Instant at = History.START.plus(Duration.ofDays(day)).plusSeconds(position);
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, day), position),
                new Moment(at, 0),
                paper ? Purpose.PAPER : Purpose.ALOUD,
                ASKED,
                new Answer.Typing(how == 'w' || how == 'x' ? "" : "42", times, 0),
                paper ? Surface.PAPER : Surface.ALOUD);
    }

    private static Progress after(String history) {
        Progress progress = Progress.blank(Steering.NONE);
        int position = 1;
        for (String one : history.split(" ")) {
            int day = Integer.parseInt(one.substring(0, one.length() - 1));
            progress = progress.after(given(day, one.charAt(one.length() - 1), position++));
        }
        return progress;
    }

    /** Accuracy counts as usual; quickness in two steps, so that only what came at once can be fluent. */
    @ParameterizedTest
    @CsvSource({
        "0q 0q 0q 1q 1q, FLUENT",
        "0s 0s 0s 1s 1s, ACCURATE",
        "0s 0s 1q 1q 1q, FLUENT",
        "0q 0q 1s 1s 1s, ACCURATE",
        "0w 0w 0q 1q 1q, ACQUIRING",
        "0p 0p 0p 1p 1p, ACCURATE",
        "0p 0p 0x 1x 1p, ACQUIRING"
    })
    void whatWasHeardOrWrittenCountsForTheLevel(String history, Mastery level) {
        Progress progress = after(history);
        assertEquals(level, progress.mastery(ASKED.trace()).level());
        assertEquals(Optional.empty(), progress.mastery(ASKED.trace()).medianThinking(), "nobody measured it");
    }

    /** Reading and two digits take 2.4 s: 2.6 s of five are thinking, within the usual limit of 3 s, and 3.6 of six. */
    @ParameterizedTest
    @CsvSource({"0t 0t 0t 1t 1t, FLUENT, 2600", "0l 0l 0l 1l 1l, ACCURATE, 3600", "0t 0t 0t 1l 1l, FLUENT, 2600"})
    void aTimedPageCanBeQuickByEachAnswersShareOfItsTime(String history, Mastery level, long median) {
        Progress progress = after(history);
        assertEquals(level, progress.mastery(ASKED.trace()).level());
        assertEquals(
                Optional.of(Duration.ofMillis(median)),
                progress.mastery(ASKED.trace()).medianThinking());
    }

    /** Lines come whole: what hands and ears need is measured on five copied lines, and what is left of a line was thinking. */
    @ParameterizedTest
    @CsvSource({"4400, FLUENT, 2500", "6000, ACCURATE, 4100"})
    void aChildWhoPractisesByPlainLinesAloneBecomesFluent(long whole, Mastery level, long thinking) {
        Progress progress = Progress.blank(Steering.NONE);
        for (int i = 0; i < 5; i++) {
            progress = progress.after(byLine(Given.copy(37, History.START.plusSeconds(i), 500, 1900), 1900));
        }
        for (int i = 0; i < 5; i++) {
            progress = progress.after(byLine(given(i / 3, 'q', 6 + i), whole));
        }
        assertEquals(level, progress.mastery(ASKED.trace()).level());
        assertEquals(
                Optional.of(Duration.ofMillis(thinking)),
                progress.mastery(ASKED.trace()).medianThinking());
    }

    private static Answer byLine(Answer a, long whole) {
        Answer.Times times = new Answer.Times(Optional.empty(), Optional.of(Duration.ofMillis(whole)));
        return new Answer(
                a.place(),
                new Moment(a.askedAt(), 0),
                a.purpose() == Purpose.ALOUD ? Purpose.PRACTISE : a.purpose(),
                a.prompt(),
                new Answer.Typing(a.typed(), times, 0),
                Surface.PLAIN);
    }

    @Test
    void memoryBelievesATimedPageMoreThanOneThatNobodyTimed() {
        assertTrue(quick("0t 1t") > quick("0p 1p"), "quick on a page is quick");
        assertTrue(quick("0t 1t") > quick("0l 1l"), "slow on a page is slow");
    }

    private static double quick(String history) {
        return after(history)
                .memory()
                .chanceQuick(ASKED.trace().index(), History.at(3).toEpochMilli());
    }

    private static double chance(String history) {
        return after(history).memory().forecast(ASKED.trace(), History.at(3)).chanceRight();
    }

    @Test
    void memoryTakesRightAndWrongAsOfAnyAnswerAndBelievesTheQuickOneMore() {
        assertTrue(chance("0q 1q") > chance("0s 1s"), "quick says more than slow");
        assertTrue(chance("0s 1s") > chance("0w 1w"), "right says more than wrong");
        assertTrue(chance("0p 1p") > chance("0p 1x"), "not right on paper is not right");
    }

    @Test
    void aPaceIsQuickOrSlowOnlyWhereSomebodyHeardIt() {
        assertTrue(HeardPace.isQuick(given(0, 'q', 1)));
        assertFalse(HeardPace.isSlow(given(0, 'q', 1)));
        assertTrue(HeardPace.isSlow(given(0, 's', 1)));
        for (char how : "wpx".toCharArray()) {
            assertFalse(HeardPace.isQuick(given(0, how, 1)) || HeardPace.isSlow(given(0, how, 1)));
        }
        assertEquals(1.5, HeardPace.seconds(given(0, 'q', 1), 3));
        assertEquals(6, HeardPace.seconds(given(0, 's', 1), 3));
    }
}
