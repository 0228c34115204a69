// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Guards against evidence that does not add up, or that counts a time for a recall it does not speak for. */
class LikelihoodTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final double SPEED_UP = USUAL.speedUp;
    private static final double WORKING_OUT = Math.log(USUAL.workingOut);
    private static final double LEAST = 1e-3;
    private static final double STEP = 0.01;
    private static final double END = 12;

    private static Speed.Level level(double middle) {
        return new Speed.Level(middle, USUAL.spread);
    }

    private static double right(double logSeconds, double activation, double level) {
        return new Likelihood(true, logSeconds, level(level), USUAL).at(activation) - LEAST;
    }

    private static double wrong(double activation) {
        return new Likelihood(false, 0, level(0), USUAL).at(activation) - LEAST;
    }

    /** An integral over the logarithm of the thinking time, by the trapezoid rule. */
    private static double integral(double activation, double level, int power) {
        double sum = 0;
        for (double log = -END; log <= END; log += STEP) {
            sum += STEP * Math.pow(log, power) * right(log, activation, level);
        }
        return sum;
    }

    @Property(tries = 40)
    void rightAtAnyTimeAndWrongTogetherAreCertain(
            @ForAll @DoubleRange(min = -6, max = 4) double activation,
            @ForAll @DoubleRange(min = -1, max = 1) double level) {
        assertEquals(1, integral(activation, level, 0) + wrong(activation), 1e-6);
    }

    /** What is recalled takes e^(level − speed·activation) at the median, what is worked out its own time. */
    @Property(tries = 40)
    void theTimeOfARecallFallsWithActivationAndThatOfWorkingOutDoesNot(
            @ForAll @DoubleRange(min = -1, max = 1) double level,
            @ForAll @DoubleRange(min = 3, max = 4) double strong) {
        double recalled = integral(strong, level, 1) / integral(strong, level, 0);
        assertEquals(level - SPEED_UP * strong, recalled, 1e-4);
        assertEquals(WORKING_OUT, integral(-6, level, 1) / integral(-6, level, 0), 1e-4);
    }

    @Test
    void bothTimesAreLogNormalAsTheLibraryHasThem() {
        NormalDistribution recalled = new NormalDistribution(-SPEED_UP * 4, USUAL.spread);
        NormalDistribution worked = new NormalDistribution(WORKING_OUT, USUAL.workingSpread);
        for (double log = -4; log < 4; log += 0.25) {
            assertEquals((1 - USUAL.slips) * recalled.density(log), right(log, 4, 0), 1e-4);
            assertEquals(USUAL.workedOut * worked.density(log), right(log, -9, 0), 1e-4);
        }
    }

    /** The threshold is recalled half the time; a strong fact is missed by a slip alone, an unknown one unless worked out. */
    @Test
    void anErrorIsASlipOrAnUnknownFactThatWasNotWorkedOut() {
        assertEquals(USUAL.slips, wrong(9), 1e-9);
        assertEquals(1 - USUAL.workedOut, wrong(-9), 1e-9);
        assertEquals((USUAL.slips + 1 - USUAL.workedOut) / 2, wrong(USUAL.threshold), 1e-9);
    }

    @Test
    void aFactThatWasNeverMetIsAsLikelyAsOneThatIsAllButGone() {
        double never = new Likelihood(true, 1, level(0), USUAL).at(Double.NEGATIVE_INFINITY);
        assertEquals(new Likelihood(true, 1, level(0), USUAL).at(-30), never, 1e-12);
        assertTrue(never > LEAST);
    }

    @Test
    void whereTimesCountForNothingEveryTimeTellsTheSame() {
        Parameters timeless = USUAL.withoutTimes();
        double quick = new Likelihood(true, -1, level(0), timeless).at(0.5);
        assertEquals(quick, new Likelihood(true, 2, level(0), timeless).at(0.5), 1e-12);
        double recall = Equations.chanceOfRecall(0.5, USUAL.threshold, USUAL.noise);
        assertEquals(recall * (1 - USUAL.slips) + (1 - recall) * USUAL.workedOut + LEAST, quick, 1e-12);
    }

    /** Of right answers at one activation and time, the part that was recalled: by the rule of Bayes. */
    @Property(tries = 40)
    void aRightAnswerIsTakenForRecalledAsFarAsItsTimeSpeaksForIt(
            @ForAll @DoubleRange(min = -3, max = 3) double activation,
            @ForAll @DoubleRange(min = -2, max = 3) double logSeconds) {
        double recall = Equations.chanceOfRecall(activation, USUAL.threshold, USUAL.noise);
        double recalled = recall
                * (1 - USUAL.slips)
                * new NormalDistribution(-SPEED_UP * activation, USUAL.spread).density(logSeconds);
        double worked = (1 - recall)
                * USUAL.workedOut
                * new NormalDistribution(WORKING_OUT, USUAL.workingSpread).density(logSeconds);
        assertEquals(
                recalled / (recalled + worked + LEAST),
                new Likelihood(true, logSeconds, level(0), USUAL).shareRecalled(activation),
                1e-9);
    }
}
