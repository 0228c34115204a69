// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Guards against a child's own record that corrects the forecasts the wrong way, too late, or too sure of itself. */
class CorrectionTest {
    /** Log odds. Less doubt draws a forecast away from one half, and a weight at its end takes no part in a change. */
    private static final double LESS_DOUBT = 0.05;

    private static final Offset NONE = Offset.unknown(0);
    private static final Offset TRACE = Offset.unknown(0.3);

    private static double logOdds(double chance) {
        return Math.log(chance / (1 - chance));
    }

    /** A record of random answers; the model's chances are random too, the gaps up to three weeks. */
    private static Correction record(long seed, int answers) {
        SplittableRandom dice = new SplittableRandom(seed);
        Correction correction = Correction.usual();
        for (int i = 0; i < answers; i++) {
            double chance = dice.nextDouble(0.05, 0.99);
            correction = correction
                    .after(chance, dice.nextDouble(0.5, 21), TRACE, dice.nextDouble() < chance)
                    .correction();
        }
        return correction;
    }

    /** Worked by hand from what is usual: .3 + .8 · ln 3; a tenth for each e-fold of days, a tenth more beyond a week. */
    @Test
    void beforeAnyRecordForecastsAreShallowAndGapsTakeALittle() {
        Correction usual = Correction.usual();
        double day = 0.3 + 0.8 * Math.log(3);
        assertEquals(day, usual.middle(0.75, 1, NONE), 1e-12);
        assertEquals(day, usual.middle(0.75, 0.5, NONE), 1e-12);
        assertEquals(day - 0.1 * Math.log(7), usual.middle(0.75, 7, NONE), 1e-12);
        assertEquals(day - 0.1 * Math.log(14) - 0.1 * Math.log(2), usual.middle(0.75, 14, NONE), 1e-12);
        assertEquals(day + 0.5, usual.middle(0.75, 1, new Offset(0.5, 0, 0)), 1e-12);
        // Log odds beyond six count as six: no forecast is certain.
        assertEquals(0.3 + 4.8, usual.middle(1, 1, NONE), 1e-12);
        assertEquals(0.3 - 4.8, usual.middle(0, 1, NONE), 1e-12);
        // .7² for the child and .3² for the trace; ln 60 days with .3², ln of 60 days in weeks with .4².
        assertEquals(0.58, usual.doubt(1, TRACE), 1e-12);
        double long60 = Math.log(60.0 / 7);
        assertEquals(0.49 + 0.09 * Math.log(60) * Math.log(60) + 0.16 * long60 * long60, usual.doubt(60, NONE), 1e-12);
    }

    /** The mean of the logistic curve over the normal distribution, by the trapezoid rule; the approximation's own error. */
    @Property(tries = 60)
    void theChanceIsTheMeanOverAllThatIsInDoubt(
            @ForAll @DoubleRange(min = 0.3, max = 0.99) double chance,
            @ForAll @DoubleRange(min = 0, max = 20) double days) {
        Correction usual = Correction.usual();
        double middle = usual.middle(chance, days, TRACE);
        if (middle < 0) {
            return;
        }
        double spread = Math.sqrt(usual.doubt(days, TRACE));
        NormalDistribution normal = new NormalDistribution(middle, spread);
        double mean = 0;
        double step = spread / 100;
        for (double x = middle - 8 * spread; x < middle + 8 * spread; x += step) {
            mean += step * normal.density(x) * Equations.logistic(x);
        }
        assertEquals(mean, usual.chance(chance, days, TRACE), 0.015);
    }

    @Property(tries = 100)
    void noForecastRisesByWaitingAndASurerFactStaysSurer(
            @ForAll long seed,
            @ForAll @IntRange(min = 0, max = 400) int answers,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double chance) {
        Correction correction = record(seed, answers);
        double before = 1;
        double doubt = 0;
        for (double days = 0.01; days < 1000; days *= 1.7) {
            double now = correction.chance(chance, days, TRACE);
            assertTrue(now <= before + 1e-12 && now > 0);
            assertTrue(correction.chance(chance + 0.005, days, TRACE) >= now);
            assertTrue(correction.doubt(days, TRACE) >= doubt);
            before = now;
            doubt = correction.doubt(days, TRACE);
        }
    }

    @Property(tries = 100)
    void whatCameTrueRaisesForecastsAndWhatFailedLowersThemForTheChildAndForTheTraceMore(
            @ForAll long seed,
            @ForAll @IntRange(min = 0, max = 400) int answers,
            @ForAll @DoubleRange(min = 0.02, max = 0.98) double chance,
            @ForAll @DoubleRange(min = 0.1, max = 40) double days) {
        Correction correction = record(seed, answers);
        double before = correction.middle(chance, days, TRACE);
        Correction.Learned up = correction.after(chance, days, TRACE, true);
        Correction.Learned down = correction.after(chance, days, TRACE, false);
        // At its ends a weight counts as if it stood there, so the child's forecast may stay as it is.
        double higher = up.correction().middle(chance, days, TRACE);
        double lower = down.correction().middle(chance, days, TRACE);
        assertTrue(higher >= before - LESS_DOUBT, () -> higher + " after " + before);
        assertTrue(lower <= before + LESS_DOUBT, () -> lower + " after " + before);
        assertTrue(up.own().value() > 0 && down.own().value() < 0);
        assertTrue(up.own().doubt() <= TRACE.doubt() && down.own().doubt() <= TRACE.doubt());
    }

    /**
     * Three children whose chances are the model's, whose are one and a half log odds lower, and whose are half as far from
     * one half. After eighty answers the forecast is nearer to each of them than it was, on the mean of fifty children.
     */
    @Test
    void itLearnsInTensOfAnswers() {
        assertTrue(missAfter(0, 0, -1.5) > 1);
        assertTrue(missAfter(80, 0, -1.5) < 0.5);
        assertTrue(missAfter(80, 0, 0.6) < 0.35);
        assertTrue(missAfter(80, 0.5, 0) < missAfter(0, 0.5, 0));
        assertTrue(missAfter(400, 0.5, 0) < 0.25);
    }

    /** The mean miss in log odds, after so many answers of a child whose log odds are offset + (slope or 1) · model's. */
    private static double missAfter(int answers, double slope, double offset) {
        double sum = 0;
        int count = 0;
        for (int child = 0; child < 50; child++) {
            SplittableRandom dice = new SplittableRandom(child);
            Correction correction = Correction.usual();
            for (int i = 0; i < answers; i++) {
                double chance = dice.nextDouble(0.3, 0.99);
                boolean came = dice.nextDouble() < truth(chance, slope, offset);
                correction = correction.after(chance, 1, NONE, came).correction();
            }
            for (double chance = 0.3; chance < 0.99; chance += 0.05) {
                sum += Math.abs(correction.middle(chance, 1, NONE) - logOdds(truth(chance, slope, offset)));
                count++;
            }
        }
        return sum / count;
    }

    private static double truth(double chance, double slope, double offset) {
        return Equations.logistic(offset + (slope == 0 ? 1 : slope) * logOdds(chance));
    }

    /** A child who forgets in weeks what the model says it keeps: told by its own long gaps, not by its short ones. */
    @Test
    void whatLongGapsDoIsLearnedFromLongGaps() {
        Correction shortOnly = Correction.usual();
        Correction both = Correction.usual();
        for (int i = 0; i < 100; i++) {
            shortOnly = shortOnly.after(0.95, 1, NONE, i % 20 != 0).correction();
            both = both.after(0.95, 1, NONE, i % 20 != 0).correction();
            if (i % 5 == 0) {
                both = both.after(0.95, 14, NONE, i % 10 == 0).correction();
            }
        }
        assertEquals(0.95, both.chance(0.95, 1, NONE), 0.04);
        assertTrue(both.chance(0.95, 14, NONE) < 0.65);
        assertTrue(shortOnly.chance(0.95, 14, NONE) > 0.8);
        assertTrue(both.doubt(14, NONE) < shortOnly.doubt(14, NONE));
    }

    /** A child who has a fact in mind for the sitting and not for the day: each is foretold as it is. */
    @Test
    void whatIsInMindInTheSameSittingSaysNothingOfTomorrow() {
        Correction correction = Correction.usual();
        double tomorrow = correction.chance(0.5, 1, TRACE);
        for (int i = 0; i < 30; i++) {
            correction = correction.after(0.5, 0.001, TRACE, true).correction();
        }
        assertTrue(correction.chance(0.5, 0.001, TRACE) > 0.8);
        assertEquals(tomorrow, correction.chance(0.5, 1, TRACE), 0);
        assertEquals(tomorrow, correction.chance(0.5, 0.05, TRACE), 0);
        // One who does worse in the same sitting is not foretold to do better by waiting.
        for (int i = 0; i < 300; i++) {
            correction = correction.after(0.5, 0.001, TRACE, false).correction();
        }
        assertEquals(tomorrow, correction.chance(0.5, 0.001, TRACE), 1e-9);
        assertEquals(TRACE, correction.after(0.5, 0.001, TRACE, true).own());
    }
}
