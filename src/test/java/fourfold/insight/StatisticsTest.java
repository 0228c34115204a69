// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.KendallsCorrelation;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against quantiles, slopes and intervals that a statistics library (Apache Commons Math 3.6.1) works out otherwise. */
class StatisticsTest {
    /** NIST Statistical Reference Datasets, linear regression, Norris: certified slope 1.00211681802045. */
    private static final double[] NORRIS_X = {
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5,
        11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1,
        448.9, 0.5
    };

    private static final double[] NORRIS_Y = {
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
        10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
        449.2, 0.2
    };

    /** Values for definition 8 worked out with NumPy 2.4 (method "median_unbiased"). */
    @ParameterizedTest
    @CsvSource({"0.1, 1.31", "0.25, 1.866667", "0.5, 2.95", "0.75, 4.533333", "0.9, 8.216667"})
    void quantilesAreThoseOfAnotherProgram(double share, double expected) {
        double[] sorted = {1.2, 1.5, 1.9, 2.2, 2.8, 3.1, 3.9, 4.4, 6.0, 9.5};
        assertEquals(expected, Spread.quantile(sorted, share), 1e-6);
    }

    @Test
    void quantilesOfRandomNumbersAreThoseOfTheLibrary() {
        Random random = new Random(7);
        for (int n = 1; n < 60; n++) {
            double[] numbers = IntStream.range(0, n)
                    .mapToDouble(i -> random.nextGaussian())
                    .toArray();
            Percentile library = new Percentile().withEstimationType(EstimationType.R_8);
            Spread spread = Spread.of(numbers).orElseThrow();
            assertEquals(library.evaluate(numbers, 25), spread.low(), 1e-12);
            assertEquals(library.evaluate(numbers, 50), spread.median(), 1e-12);
            assertEquals(library.evaluate(numbers, 75), spread.high(), 1e-12);
        }
    }

    @Test
    void theTrendOfACleanLineIsTheCertifiedOneAndAFewWildPointsDoNotMoveIt() {
        double[] x = NORRIS_X.clone();
        Trend clean = Trend.through(x, NORRIS_Y).orElseThrow();
        assertEquals(1.00211681802045, clean.slope(), 0.0005);
        assertTrue(clean.interval().low() < 1.00211681802045 && clean.interval().high() > 1.00211681802045);
        double[] wild = NORRIS_Y.clone();
        for (int i : new int[] {3, 9, 20, 28}) {
            wild[i] *= 3;
        }
        assertEquals(clean.slope(), Trend.through(x, wild).orElseThrow().slope(), 0.01);
    }

    /** By its definition, Sen's slope leaves residuals whose rank correlation with x (Kendall's tau) is nought. */
    @Test
    void whatTheTrendLeavesHasNoRankCorrelationWithTime() {
        Random random = new Random(11);
        for (int n = 10; n <= 60; n += 10) {
            double[] x = IntStream.range(0, n).asDoubleStream().toArray();
            double[] y = Arrays.stream(x)
                    .map(v -> 20 + 0.7 * v + 5 * random.nextGaussian())
                    .toArray();
            Trend trend = Trend.through(x, y).orElseThrow();
            double[] rest = IntStream.range(0, n)
                    .mapToDouble(i -> y[i] - trend.slope() * x[i])
                    .toArray();
            assertEquals(0, new KendallsCorrelation().correlation(x, rest), 1.5 / n);
            assertTrue(trend.interval().low() < trend.slope()
                    && trend.slope() < trend.interval().high());
        }
    }

    @Test
    void theIntervalOfTheTrendHoldsTheTruthAboutNineteenTimesInTwenty() {
        Random random = new Random(5);
        int held = 0;
        for (int run = 0; run < 400; run++) {
            double[] x = IntStream.range(0, 30).asDoubleStream().toArray();
            double[] y = Arrays.stream(x)
                    .map(v -> 0.5 * v + 4 * random.nextGaussian())
                    .toArray();
            Trend trend = Trend.through(x, y).orElseThrow();
            held += trend.interval().low() <= 0.5 && 0.5 <= trend.interval().high() ? 1 : 0;
        }
        assertTrue(held >= 368 && held <= 394, held + " of 400");
    }

    /** Worked by hand: the slopes are −1, 1/2, 1, 4/3, 2, 3; the rests at 7/6 are −1/3, 1, 3/2, 11/6. */
    @Test
    void theTrendThroughFourPointsIsTheOneWorkedByHand() {
        Trend trend = Trend.through(new double[] {0, 1, 2, 3}, new double[] {1, 3, 2, 5})
                .orElseThrow();
        assertEquals(7.0 / 6, trend.slope(), 1e-12);
        assertEquals(1.25, trend.level(), 1e-12);
        assertEquals(-1, trend.interval().low(), 1e-12);
        assertEquals(3, trend.interval().high(), 1e-12);
        assertEquals(4, trend.points());
        assertTrue(trend.interval().low() < 0 && trend.interval().high() > 0);
    }

    /**
     * Ten points make 45 slopes, and a score with the variance 10 · 9 · 25 / 18 = 125: the ends are those of rank
     * (45 − 21.9) / 2 and (45 + 21.9) / 2 + 1 (Sen 1968; Gilbert 1987, Statistical Methods for Environmental Pollution
     * Monitoring, 217–219, from memory), rounded outwards to the 11th and the 35th.
     */
    @Test
    void theEndsOfTheIntervalAreSlopesOfTheRanksThatSenSays() {
        double[] x = IntStream.range(0, 10).asDoubleStream().toArray();
        double[] y = {3, 1, 4, 1.5, 9, 2, 6, 5, 3.5, 8};
        double[] slopes = IntStream.range(0, 10)
                .boxed()
                .flatMap(i -> IntStream.range(i + 1, 10).mapToObj(j -> (y[j] - y[i]) / (j - i)))
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        Trend trend = Trend.through(x, y).orElseThrow();
        assertEquals(slopes[22], trend.slope(), 1e-12);
        assertEquals(slopes[10], trend.interval().low(), 1e-12);
        assertEquals(slopes[34], trend.interval().high(), 1e-12);
    }

    @Test
    void whatFallsIsTheMirrorOfWhatRises() {
        Random random = new Random(3);
        for (int n = 2; n < 40; n++) {
            double[] x = IntStream.range(0, n).asDoubleStream().toArray();
            double[] y =
                    Arrays.stream(x).map(v -> v + 4 * random.nextGaussian()).toArray();
            Trend up = Trend.through(x, y).orElseThrow();
            Trend down =
                    Trend.through(x, Arrays.stream(y).map(v -> -v).toArray()).orElseThrow();
            assertEquals(up.slope(), -down.slope(), 1e-12);
            assertEquals(up.interval().low(), -down.interval().high(), 1e-12);
            assertEquals(up.interval().high(), -down.interval().low(), 1e-12);
            assertEquals(up.level(), -down.level(), 1e-12);
        }
    }

    @Test
    void aLineWithoutNoiseRisesOrFallsWithoutDoubtAndALevelOneDoesNeither() {
        double[] x = IntStream.range(0, 12).asDoubleStream().toArray();
        Trend rising =
                Trend.through(x, Arrays.stream(x).map(v -> 2 * v + 1).toArray()).orElseThrow();
        assertTrue(rising.interval().low() > 0);
        Trend level = Trend.through(x, new double[12]).orElseThrow();
        assertTrue(level.interval().low() <= 0 && level.interval().high() >= 0);
    }

    @Test
    void pointsOfOneMomentMakeNoTrendAndOnlyTheNewestFourHundredCount() {
        assertTrue(Trend.through(new double[] {3}, new double[] {1}).isEmpty());
        assertTrue(Trend.through(new double[] {3, 3}, new double[] {1, 2}).isEmpty());
        double[] x = IntStream.range(0, 450).asDoubleStream().toArray();
        double[] y = Arrays.stream(x).map(v -> v < 50 ? 1000 : v).toArray();
        Trend trend = Trend.through(x, y).orElseThrow();
        assertEquals(400, trend.points());
        assertEquals(new Trend(1, new Trend.Interval(1, 1), 0, 400), trend);
    }
}
