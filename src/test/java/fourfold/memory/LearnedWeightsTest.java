// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Guards against weights that are not what the answers say, and against a doubt that is not the doubt there is. */
class LearnedWeightsTest {
    private static final double[] USUAL = {0.5, -1};
    private static final double[] SPREADS = {0.8, 0.4};
    private static final double NOISE = 0.3;

    /**
     * Observation by observation it comes to the mean and the covariance of the normal regression solved at once by a
     * library (Bishop 2006, Pattern Recognition and Machine Learning, 3.50 and 3.51; from memory), but for the drift.
     */
    @Property(tries = 50)
    void oneByOneTheWeightsAreThoseOfTheRegressionSolvedAtOnce(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int answers) {
        SplittableRandom dice = new SplittableRandom(seed);
        LearnedWeights weights = LearnedWeights.usual(USUAL, SPREADS);
        RealMatrix precision = new Array2DRowRealMatrix(new double[][] {
            {1 / (SPREADS[0] * SPREADS[0]), 0}, {0, 1 / (SPREADS[1] * SPREADS[1])}
        });
        RealVector sum = precision.operate(new ArrayRealVector(USUAL));
        for (int i = 0; i < answers; i++) {
            double[] features = {1, dice.nextDouble(-2, 2)};
            double seen = dice.nextDouble(-3, 3);
            weights = weights.after(
                    weights.shared(features), seen - weights.expected(features), weights.variance(features) + NOISE);
            RealVector f = new ArrayRealVector(features);
            precision = precision.add(f.outerProduct(f).scalarMultiply(1 / NOISE));
            sum = sum.add(f.mapMultiply(seen / NOISE));
        }
        RealMatrix covariance = new LUDecomposition(precision).getSolver().getInverse();
        RealVector mean = covariance.operate(sum);
        double[] some = {1, 1.5};
        for (int i = 0; i < 2; i++) {
            assertEquals(mean.getEntry(i), weights.weight(i), 0.01);
            assertEquals(covariance.getEntry(i, i), weights.doubt(i), 0.002);
        }
        RealVector x = new ArrayRealVector(some);
        assertEquals(mean.dotProduct(x), weights.expected(some), 0.02);
        assertEquals(covariance.operate(x).dotProduct(x), weights.variance(some), 0.005);
    }

    @Test
    void theDoubtNeverExceedsThatOfTheBeginningAndNeverVanishes() {
        LearnedWeights weights = LearnedWeights.usual(USUAL, SPREADS);
        double[] first = {1, 0};
        for (int i = 0; i < 200_000; i++) {
            weights = weights.after(weights.shared(first), 0, weights.variance(first) + NOISE);
        }
        // What is never seen stays in doubt as at first; what is always seen is never quite sure, for it may change.
        assertEquals(0.16, weights.doubt(1), 1e-12);
        assertEquals(USUAL[1], weights.weight(1), 0);
        // Where drift q and information balance, the doubt is the root of q · noise: 6.4e-6 · 0.3.
        assertEquals(Math.sqrt(6.4e-6 * 0.3), weights.doubt(0), 1e-4);
    }

    /** The full matrix, kept beside as the textbook has it, for four weights. */
    @Property(tries = 20)
    void whatIsKeptOfTheCovarianceIsEnough(@ForAll long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double[] spreads = {0.4, 0.3, 0.2, 0.5};
        LearnedWeights weights = LearnedWeights.usual(new double[4], spreads);
        double[][] full = new double[4][4];
        for (int i = 0; i < 4; i++) {
            full[i][i] = spreads[i] * spreads[i];
        }
        for (int answer = 0; answer < 12; answer++) {
            double[] f = {1, dice.nextDouble(-2, 2), dice.nextInt(2), dice.nextDouble(3)};
            double[] part = new Array2DRowRealMatrix(full).operate(f);
            double variance = new ArrayRealVector(part).dotProduct(new ArrayRealVector(f));
            assertArrayEquals(part, weights.shared(f), 1e-4);
            assertEquals(variance, weights.variance(f), 1e-3);
            assertEquals(weights.variance(f), weights.variance(f, weights.shared(f)), 1e-12);
            weights = weights.after(weights.shared(f), 1, variance + NOISE);
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    full[i][j] -= part[i] * part[j] / (variance + NOISE);
                }
            }
        }
    }

    /** One number by hand: a doubt of .09, an observation with as much again, so half of the way and half of the doubt. */
    @Test
    void anOffsetGoesHalfTheWayWhereTraceAndAnswerAreEquallyInDoubt() {
        Offset after = Offset.unknown(0.3).after(1, 0.18);
        assertEquals(0.5, after.value(), 1e-12);
        assertEquals(0.045 + 0.01 * 0.09, after.doubt(), 1e-12);
    }

    @Property(tries = 50)
    void anOffsetIsNeverInMoreDoubtThanAtFirstAndFollowsWhatItSees(
            @ForAll @DoubleRange(min = 0.05, max = 1) double spread,
            @ForAll @DoubleRange(min = 0.05, max = 4) double noise,
            @ForAll @DoubleRange(min = -2, max = 2) double truth) {
        Offset offset = Offset.unknown(spread);
        double before = Math.abs(truth);
        for (int i = 0; i < 50; i++) {
            offset = offset.after(truth - offset.value(), offset.doubt() + noise);
            double off = Math.abs(truth - offset.value());
            assertTrue(off <= before && offset.doubt() > 0 && offset.doubt() <= offset.most());
            before = off;
        }
        assertEquals(Offset.unknown(0), Offset.unknown(0).after(1, 1));
    }
}
