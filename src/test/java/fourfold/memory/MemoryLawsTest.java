// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Guards against forecasts that no teacher would believe, for any history and any gap. */
class MemoryLawsTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final MotorTime HANDS = MotorTime.unknown();
    private static final Question SEVEN_EIGHTS = Question.product(7, 8);
    private static final Trace TRACE = SEVEN_EIGHTS.trace();
    private static final Duration LIMIT = Duration.ofSeconds(3);

    /** Drills of twenty answers on four days a week; a child who is right in seven of ten. */
    private static List<Answer> log(long seed, int answers) {
        SplittableRandom dice = new SplittableRandom(seed);
        List<Question> questions = Families.questions();
        List<Answer> log = new ArrayList<>();
        Instant at = Given.START;
        for (int i = 0; i < answers; i++) {
            at = i % 20 == 19 ? at.plus(Duration.ofHours(dice.nextInt(20, 80))) : at.plusSeconds(dice.nextInt(3, 12));
            Question question = dice.nextInt(3) == 0 ? SEVEN_EIGHTS : questions.get(dice.nextInt(200));
            double thinking = 0.4 + dice.nextDouble() * 5;
            double luck = dice.nextDouble();
            log.add(
                    luck < 0.7
                            ? Given.right(question, at, thinking)
                            : luck < 0.9
                                    ? Given.wrong(question, at, thinking)
                                    : luck < 0.95 ? Given.missing(question, at) : Given.shown(question, at));
        }
        return log;
    }

    private static Memory memory(List<Answer> log) {
        Memory.Fold fold = Memory.blank(USUAL).fold();
        log.forEach(answer -> fold.take(answer, HANDS));
        return fold.memory();
    }

    private static Instant end(List<Answer> log) {
        return log.get(log.size() - 1).askedAt().plusSeconds(10);
    }

    @Property(tries = 60)
    void recall_falls_with_time_and_never_rises_without_practice(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int n) {
        List<Answer> log = log(seed, n);
        Memory memory = memory(log);
        for (Trace trace : Families.traces()) {
            double before = 1;
            for (double gap = 1; gap < 7e7; gap *= 3) {
                Forecast forecast = memory.forecast(trace, end(log).plusSeconds((long) gap));
                double chance = forecast.chanceRightWithin(LIMIT);
                assertTrue(chance <= before + 1e-12, "rose after " + gap + " s");
                assertTrue(chance >= 0 && chance <= 1 && !Double.isNaN(chance));
                assertTrue(forecast.chanceRight() >= 0 && forecast.chanceRight() <= 1);
                assertTrue(!forecast.medianThinking().isNegative()
                        && forecast.medianThinking().toSeconds() <= 20);
                before = chance;
            }
        }
    }

    /** To a ten-thousandth: the child's usual pace moves a hair with every answer (7e-6 was the most in 8,000 tries). */
    @Property(tries = 60)
    void a_fast_right_answer_never_lowers_the_forecast(
            @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 200) int n,
            @ForAll @IntRange(min = 1, max = 60) int days) {
        List<Answer> log = log(seed, n);
        Memory memory = memory(log);
        Instant asked = end(log).plus(Duration.ofHours(20));
        double half = memory.forecast(TRACE, asked).medianThinking().toMillis() / 2000.0;
        Memory after = memory.after(Given.right(SEVEN_EIGHTS, asked, Math.min(half, 1)), HANDS);
        Instant later = asked.plus(Duration.ofDays(days));
        assertTrue(after.forecast(TRACE, later).chanceRightWithin(LIMIT)
                >= memory.forecast(TRACE, later).chanceRightWithin(LIMIT) - 1e-4);
    }

    @Property(tries = 60)
    void a_slow_right_answer_raises_the_forecast_less_than_a_fast_one(
            @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 200) int n,
            @ForAll @DoubleRange(min = 1.5, max = 4) double times) {
        List<Answer> log = log(seed, n);
        Memory memory = memory(log);
        Instant asked = end(log).plus(Duration.ofHours(20));
        double median = memory.forecast(TRACE, asked).medianThinking().toMillis() / 1000.0;
        Memory fast = memory.after(Given.right(SEVEN_EIGHTS, asked, Math.max(0.2, median / 2)), HANDS);
        Memory slow = memory.after(Given.right(SEVEN_EIGHTS, asked, Math.max(0.3, median * times)), HANDS);
        Instant later = asked.plus(Duration.ofDays(7));
        assertTrue(slow.forecast(TRACE, later).chanceRightWithin(LIMIT)
                <= fast.forecast(TRACE, later).chanceRightWithin(LIMIT) + 1e-9);
    }

    @Property(tries = 40)
    void an_error_lowers_the_forecast_against_a_fast_right_answer(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 200) int n) {
        List<Answer> log = log(seed, n);
        Memory memory = memory(log);
        Instant asked = end(log).plus(Duration.ofHours(20));
        memory = memory.after(Given.shown(SEVEN_EIGHTS, asked), HANDS);
        asked = asked.plus(Duration.ofHours(30));
        double half = memory.forecast(TRACE, asked).medianThinking().toMillis() / 2000.0;
        double right = after(memory, Given.right(SEVEN_EIGHTS, asked, Math.max(0.2, Math.min(half, 1))));
        assertTrue(after(memory, Given.wrong(SEVEN_EIGHTS, asked, 2)) < right);
        assertTrue(after(memory, Given.missing(SEVEN_EIGHTS, asked)) < right);
    }

    private static double after(Memory memory, Answer answer) {
        Instant later = answer.askedAt().plus(Duration.ofDays(4));
        return memory.after(answer, HANDS).forecast(TRACE, later).chanceRightWithin(LIMIT);
    }

    @Property(tries = 30)
    void folding_in_two_parts_or_one_by_one_equals_folding_at_once(
            @ForAll long seed, @ForAll @IntRange(min = 2, max = 300) int n) {
        List<Answer> log = log(seed, n);
        Memory whole = memory(log);
        Memory.Fold first = Memory.blank(USUAL).fold();
        log.subList(0, n / 2).forEach(answer -> first.take(answer, HANDS));
        Memory half = first.memory();
        Memory.Fold second = half.fold();
        log.subList(n / 2, n).forEach(answer -> second.take(answer, HANDS));
        first.take(Given.wrong(SEVEN_EIGHTS, end(log), 1), HANDS);
        Memory oneByOne = half;
        for (Answer answer : log.subList(n / 2, n)) {
            oneByOne = oneByOne.after(answer, HANDS);
        }
        Instant later = end(log).plus(Duration.ofDays(3));
        for (Trace trace : Families.traces()) {
            double expected = whole.forecast(trace, later).chanceRightWithin(LIMIT);
            assertEquals(expected, second.memory().forecast(trace, later).chanceRightWithin(LIMIT), 0);
            assertEquals(expected, oneByOne.forecast(trace, later).chanceRightWithin(LIMIT), 0);
        }
    }

    @Property(tries = 30)
    void spaced_practice_beats_massed_at_equal_count(@ForAll @IntRange(min = 2, max = 8) int count) {
        Instant lastDay = Given.START.plus(Duration.ofDays(count - 1L));
        Memory spaced = Memory.blank(USUAL);
        Memory massed = Memory.blank(USUAL);
        for (int i = 0; i < count; i++) {
            spaced = spaced.after(Given.shown(SEVEN_EIGHTS, Given.START.plus(Duration.ofDays(i))), HANDS);
            massed = massed.after(Given.shown(SEVEN_EIGHTS, lastDay.plusSeconds(60L * i)), HANDS);
        }
        Instant test = lastDay.plus(Duration.ofDays(14));
        assertTrue(spaced.forecast(TRACE, test).activation()
                > massed.forecast(TRACE, test).activation());
    }

    @Test
    void five_thousand_answers_on_one_trace_stay_sane_from_a_second_to_two_years() {
        Memory.Fold fold = Memory.blank(USUAL).fold();
        Instant at = Given.START;
        for (int i = 0; i < 5000; i++) {
            at = at.plusSeconds(i % 10 == 9 ? 86_400 : 8);
            fold.take(i % 9 == 0 ? Given.wrong(SEVEN_EIGHTS, at, 2) : Given.right(SEVEN_EIGHTS, at, 1), HANDS);
        }
        Memory memory = fold.memory();
        for (long gap : new long[] {1, 60, 3600, 86_400, 30 * 86_400L, 730 * 86_400L}) {
            Forecast forecast = memory.forecast(TRACE, at.plusSeconds(gap));
            assertTrue(Double.isFinite(forecast.activation()), "after " + gap);
            assertTrue(forecast.chanceRight() > 0.5 && forecast.chanceRight() < 1);
        }
    }

    @Test
    void a_quotient_gains_from_its_product_but_less_than_the_product_itself() {
        Trace quotient = Trace.quotient(Family.of(7, 8), 7);
        Memory memory = Memory.blank(USUAL).after(Given.shown(SEVEN_EIGHTS, Given.START), HANDS);
        Instant later = Given.START.plusSeconds(600);
        assertTrue(Double.isInfinite(
                memory.forecast(Trace.quotient(Family.of(6, 8), 6), later).activation()));
        assertTrue(Double.isFinite(memory.forecast(quotient, later).activation()));
        assertTrue(memory.forecast(quotient, later).activation()
                < memory.forecast(TRACE, later).activation());
        assertTrue(Double.isInfinite(Memory.blank(USUAL)
                .after(Given.shown(Question.quotient(Family.of(7, 8), 7), Given.START), HANDS)
                .forecast(TRACE, later)
                .activation()));
    }

    @Test
    void both_orders_of_a_product_are_one_trace() {
        Memory one = Memory.blank(USUAL).after(Given.right(Question.product(7, 8), Given.START, 1), HANDS);
        Memory other = Memory.blank(USUAL).after(Given.right(Question.product(8, 7), Given.START, 1), HANDS);
        Instant later = Given.START.plusSeconds(86_400);
        assertEquals(
                one.forecast(TRACE, later).activation(),
                other.forecast(TRACE, later).activation(),
                0);
    }

    @Test
    void a_family_begun_again_is_blank_and_the_others_are_not() {
        List<Answer> log = log(3, 200);
        Memory.Fold fold = Memory.blank(USUAL).fold();
        log.forEach(answer -> fold.take(answer, HANDS));
        Memory memory = fold.without(Family.of(7, 8)).memory();
        assertTrue(Double.isInfinite(memory.forecast(TRACE, end(log)).activation()));
        assertEquals(0, memory.presentations(TRACE));
        assertTrue(Families.traces().stream().anyMatch(t -> memory.presentations(t) > 0));
    }

    @Test
    void practice_forecast_ahead_is_what_practice_brings() {
        List<Answer> log = log(8, 200);
        Memory memory = memory(log);
        Instant asked = end(log).plus(Duration.ofHours(20));
        Instant later = asked.plus(Duration.ofDays(5));
        double foreseen = memory.forecastAfterPractice(TRACE.index(), asked.toEpochMilli(), later.toEpochMilli())
                .activation();
        double shown = memory.after(Given.shown(SEVEN_EIGHTS, asked), HANDS)
                .forecast(TRACE, later)
                .activation();
        assertEquals(shown, foreseen, 0.05);
        assertTrue(foreseen > memory.forecast(TRACE, later).activation());
    }

    @Test
    void a_new_trace_starts_from_the_rate_of_its_kin() {
        Memory.Fold forgetful = Memory.blank(USUAL).fold();
        Memory.Fold keen = Memory.blank(USUAL).fold();
        Instant at = Given.START;
        for (int day = 0; day < 8; day++) {
            for (int n = 2; n <= 9; n++) {
                at = at.plusSeconds(10);
                forgetful.take(Given.wrong(Question.product(7, n), at, 4), HANDS);
                keen.take(Given.right(Question.product(7, n), at, 0.6), HANDS);
            }
            at = at.plus(Duration.ofDays(1));
        }
        Question fresh = Question.product(6, 9);
        double slow = forgetful.take(Given.shown(fresh, at), HANDS).memory().rate(fresh.trace());
        double fast = keen.take(Given.shown(fresh, at), HANDS).memory().rate(fresh.trace());
        assertTrue(slow > fast + 0.02, slow + " against " + fast);
    }
}
