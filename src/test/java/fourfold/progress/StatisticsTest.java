package fourfold.progress;

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
        Random dice = new Random(7);
        for (int n = 1; n < 60; n++) {
            double[] numbers =
                    IntStream.range(0, n).mapToDouble(i -> dice.nextGaussian()).toArray();
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
        assertTrue(clean.low() < 1.00211681802045 && clean.high() > 1.00211681802045);
        double[] wild = NORRIS_Y.clone();
        for (int i : new int[] {3, 9, 20, 28}) {
            wild[i] *= 3;
        }
        assertEquals(clean.slope(), Trend.through(x, wild).orElseThrow().slope(), 0.01);
    }

    /** By its definition, Sen's slope leaves residuals whose rank correlation with x (Kendall's tau) is nought. */
    @Test
    void whatTheTrendLeavesHasNoRankCorrelationWithTime() {
        Random dice = new Random(11);
        for (int n = 10; n <= 60; n += 10) {
            double[] x = IntStream.range(0, n).asDoubleStream().toArray();
            double[] y = Arrays.stream(x)
                    .map(v -> 20 + 0.7 * v + 5 * dice.nextGaussian())
                    .toArray();
            Trend trend = Trend.through(x, y).orElseThrow();
            double[] rest = IntStream.range(0, n)
                    .mapToDouble(i -> y[i] - trend.slope() * x[i])
                    .toArray();
            assertEquals(0, new KendallsCorrelation().correlation(x, rest), 1.5 / n);
            assertTrue(trend.low() < trend.slope() && trend.slope() < trend.high());
        }
    }

    @Test
    void theIntervalOfTheTrendHoldsTheTruthAboutNineteenTimesInTwenty() {
        Random dice = new Random(5);
        int held = 0;
        for (int run = 0; run < 400; run++) {
            double[] x = IntStream.range(0, 30).asDoubleStream().toArray();
            double[] y =
                    Arrays.stream(x).map(v -> 0.5 * v + 4 * dice.nextGaussian()).toArray();
            Trend trend = Trend.through(x, y).orElseThrow();
            held += trend.low() <= 0.5 && 0.5 <= trend.high() ? 1 : 0;
        }
        assertTrue(held >= 368 && held <= 394, held + " of 400");
    }
}
