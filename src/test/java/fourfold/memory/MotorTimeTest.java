// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
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
import org.junit.jupiter.api.Test;

/** Guards against counting slow hands as slow thinking, and one odd copy as the child's hands. */
class MotorTimeTest {
    private static final Question TWO_DIGITS = Question.product(7, 8);

    private static MotorTime copied(MotorTime hands, int times, int number, long first, long whole, Instant from) {
        MotorTime more = hands;
        for (int i = 0; i < times; i++) {
            more = more.after(Given.copy(number, from.plusSeconds(i), first, whole));
        }
        return more;
    }

    private static Duration millis(long millis) {
        return Duration.ofMillis(millis);
    }

    @Test
    void four_copies_change_nothing_and_the_fifth_does() {
        MotorTime four = copied(MotorTime.unknown(), 4, 37, 500, 900, Given.START);
        assertEquals(millis(800), four.firstKey(56, Surface.TERMINAL));
        assertFalse(four.isKnown(56, Surface.TERMINAL));
        MotorTime five = copied(four, 1, 37, 500, 900, Given.START);
        assertEquals(millis(500), five.firstKey(56, Surface.TERMINAL));
        assertEquals(millis(900), five.whole(56, Surface.TERMINAL));
        assertEquals(millis(800), five.firstKey(56, Surface.WINDOW));
    }

    @Test
    void another_digit_count_stands_in_until_there_are_five() {
        MotorTime two = copied(MotorTime.unknown(), 5, 37, 500, 900, Given.START);
        assertEquals(millis(1200), two.whole(100, Surface.TERMINAL));
        assertEquals(millis(600), two.whole(7, Surface.TERMINAL));
        assertFalse(two.isKnown(Surface.TERMINAL));
        assertTrue(copied(two, 5, 4, 450, 700, Given.START).isKnown(Surface.TERMINAL));
    }

    @Test
    void one_slow_copy_among_five_does_not_move_the_median() {
        MotorTime hands = copied(MotorTime.unknown(), 4, 37, 500, 900, Given.START);
        assertEquals(millis(500), copied(hands, 1, 37, 2500, 8000, Given.START).firstKey(56, Surface.TERMINAL));
    }

    @Test
    void hands_that_grow_faster_are_followed_within_weeks() {
        MotorTime slow = copied(MotorTime.unknown(), 20, 37, 900, 1500, Given.START);
        MotorTime later = copied(slow, 5, 37, 500, 900, Given.START.plus(Duration.ofDays(70)));
        assertEquals(millis(500), later.firstKey(56, Surface.TERMINAL));
    }

    @Test
    void no_hands_are_believed_to_be_faster_or_slower_than_hands_can_be() {
        MotorTime fastest = copied(MotorTime.unknown(), 5, 37, 160, 170, Given.START);
        assertEquals(millis(200), fastest.firstKey(56, Surface.TERMINAL));
        assertEquals(millis(200), fastest.whole(56, Surface.TERMINAL));
        MotorTime slowest = copied(MotorTime.unknown(), 5, 37, 4000, 9000, Given.START);
        assertEquals(millis(3000), slowest.firstKey(56, Surface.TERMINAL));
        assertEquals(millis(6000), slowest.whole(56, Surface.TERMINAL));
    }

    @Test
    void the_last_twenty_copies_count_and_no_more() {
        MotorTime slow = copied(MotorTime.unknown(), 30, 37, 900, 1500, Given.START);
        Instant later = Given.START.plusSeconds(60);
        assertEquals(millis(900), copied(slow, 9, 37, 500, 900, later).firstKey(56, Surface.TERMINAL));
        // Ten of each: the median lies between.
        assertEquals(millis(700), copied(slow, 10, 37, 500, 900, later).firstKey(56, Surface.TERMINAL));
        assertEquals(millis(500), copied(slow, 11, 37, 500, 900, later).firstKey(56, Surface.TERMINAL));
    }

    @Test
    void copies_older_than_eight_weeks_go_once_five_newer_ones_are_there() {
        MotorTime slow = copied(MotorTime.unknown(), 5, 37, 900, 1500, Given.START);
        Duration weeks = Duration.ofDays(56);
        MotorTime four = copied(slow, 4, 37, 500, 900, Given.START.plus(weeks).plusSeconds(60));
        assertEquals(
                millis(500),
                copied(four, 1, 37, 500, 900, Given.START.plus(weeks).plusSeconds(65))
                        .firstKey(56, Surface.TERMINAL));
        MotorTime young = copied(slow, 4, 37, 500, 900, Given.START.plusSeconds(60));
        assertEquals(
                millis(700),
                copied(young, 1, 37, 500, 900, Given.START.plusSeconds(65)).firstKey(56, Surface.TERMINAL));
    }

    @Test
    void each_surface_and_digit_count_has_hands_of_its_own() {
        MotorTime hands = copied(MotorTime.unknown(), 5, 37, 500, 900, Given.START);
        hands = copied(hands, 5, 4, 400, 600, Given.START);
        assertEquals(millis(900), hands.whole(12, Surface.TERMINAL));
        assertEquals(millis(600), hands.whole(8, Surface.TERMINAL));
        assertEquals(millis(1400), hands.whole(12, Surface.WINDOW));
        assertFalse(hands.isKnown(Surface.WINDOW));
    }

    @Test
    void the_limits_themselves_still_count() {
        MotorTime hands = copied(MotorTime.unknown(), 5, 37, 500, 900, Given.START);
        Instant at = Given.START.plusSeconds(60);
        assertNotSame(hands, hands.after(Given.copy(37, at, 150, 900)));
        assertNotSame(hands, hands.after(Given.copy(37, at, 500, 10_000)));
        assertTrue(hands.thinking(timed(150, 60_000)).isPresent());
    }

    /** Right or wrong, they come to the same: seeing the question counts, the outcome does not. */
    @Test
    void an_answer_that_tells_nothing_does_not_judge_the_memory() {
        Memory before = Memory.blank(Parameters.usual());
        for (int day = 0; day < 5; day++) {
            Answer right = Given.right(TWO_DIGITS, Given.START.plus(Duration.ofDays(day)), 1.5);
            before = before.after(right, MotorTime.unknown());
        }
        Instant at = Given.START.plus(Duration.ofDays(5));
        for (List<Optional<Duration>> times : List.of(
                List.of(Optional.of(millis(149)), Optional.of(millis(900))), // an anticipation
                List.of(Optional.of(millis(900)), Optional.of(millis(60_001))), // a walk-away
                List.of(Optional.<Duration>empty(), Optional.<Duration>empty()))) { // interrupted by a pause
            Answer any = Given.right(TWO_DIGITS, at, 1);
            double right = after(before, changed(any, "56", times.get(0), times.get(1)));
            double wrong = after(before, changed(any, "55", times.get(0), times.get(1)));
            assertEquals(right, wrong, 0, times.toString());
            assertNotEquals(right, after(before, Given.wrong(TWO_DIGITS, at, 1)));
        }
    }

    private static double after(Memory memory, Answer answer) {
        return memory.after(answer, MotorTime.unknown())
                .activation(
                        TWO_DIGITS.traceIndex(),
                        answer.askedAt().plus(Duration.ofDays(3)).toEpochMilli());
    }

    @Test
    void anticipations_walk_aways_errors_and_interrupted_copies_move_nothing() {
        MotorTime hands = copied(MotorTime.unknown(), 5, 37, 500, 900, Given.START);
        Instant at = Given.START.plusSeconds(60);
        assertSame(hands, hands.after(Given.copy(37, at, 149, 900)));
        assertSame(hands, hands.after(Given.copy(37, at, 500, 10_001)));
        Answer good = Given.copy(37, at, 300, 600);
        assertSame(hands, hands.after(changed(good, "36", good.firstKey(), good.whole())));
        assertSame(hands, hands.after(changed(good, "37", Optional.empty(), Optional.empty())));
        assertSame(hands, hands.after(Given.right(TWO_DIGITS, at, 1)));
    }

    @Test
    void thinking_is_the_larger_of_what_is_left_of_both_times() {
        MotorTime hands = copied(MotorTime.unknown(), 5, 37, 500, 900, Given.START);
        assertEquals(Optional.of(millis(1500)), hands.thinking(timed(2000, 2400)));
        // The first digit at once, then a thought before the second.
        assertEquals(Optional.of(millis(2100)), hands.thinking(timed(600, 3000)));
        assertEquals(Optional.of(millis(0)), hands.thinking(timed(400, 800)));
    }

    @Test
    void what_was_no_thinking_has_no_thinking_time() {
        MotorTime hands = MotorTime.unknown();
        assertEquals(Optional.empty(), hands.thinking(timed(100, 3000)));
        assertEquals(Optional.empty(), hands.thinking(timed(2000, 60_001)));
        assertEquals(Optional.empty(), hands.thinking(Given.missing(TWO_DIGITS, Given.START)));
        assertEquals(
                Optional.empty(), hands.thinking(changed(timed(2000, 2400), "56", Optional.empty(), Optional.empty())));
    }

    /** A line comes whole: copies by lines say what hands and ears need, and what is left of an answer was thinking. */
    @Test
    void at_plain_lines_the_whole_line_is_held_against_copied_lines() {
        MotorTime hands = MotorTime.unknown();
        for (int i = 0; i < 5; i++) {
            hands = hands.after(byLine(Given.copy(37, Given.START.plusSeconds(i), 500, 1900)));
        }
        assertTrue(hands.isKnown(56, Surface.PLAIN));
        assertEquals(millis(1900), hands.firstKey(56, Surface.PLAIN));
        assertEquals(Optional.of(millis(1500)), hands.thinking(byLine(timed(500, 3400))));
        assertEquals(Optional.of(millis(0)), hands.thinking(byLine(timed(500, 1700))));
        assertEquals(Optional.empty(), hands.thinking(changed(byLine(timed(500, 1700)), "56", NONE, NONE)));
    }

    private static final Optional<Duration> NONE = Optional.empty();

    private static Answer byLine(Answer a) {
        return new Answer(
                a.place(),
                new Moment(a.askedAt(), 0),
                a.purpose(),
                a.prompt(),
                new Answer.Typing(a.typed(), new Answer.Times(NONE, a.whole()), a.erasures()),
                Surface.PLAIN);
    }

    private static Answer timed(long first, long whole) {
        return Given.timed(TWO_DIGITS, Given.START, "56", Purpose.PRACTISE, millis(first), millis(whole));
    }

    private static Answer changed(Answer a, String typed, Optional<Duration> first, Optional<Duration> whole) {
        return new Answer(
                a.place(),
                new Moment(a.askedAt(), 0),
                a.purpose(),
                a.prompt(),
                new Answer.Typing(typed, new Answer.Times(first, whole), 0),
                a.surface());
    }
}
