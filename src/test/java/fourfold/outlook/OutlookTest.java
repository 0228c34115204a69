package fourfold.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.scheduling.LastingGain;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.TwoStrengthKind;
import java.time.Duration;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;

/** Guards against a projection that hangs on chance alone, runs backwards, or guesses from nothing. */
class OutlookTest {
    @Test
    void theRangeIsInOrderAndTheSameForTheSameSeed() {
        SchoolYear year = new SchoolYear(new TwoStrengthKind().create(3), new LastingGain(), 3, a -> {});
        assertTrue(!Outlook.isPossible(year.progress()));
        year.run(22);
        assertTrue(Outlook.isPossible(year.progress()));
        Outlook outlook = new Outlook(year.progress(), year.now().plus(Duration.ofDays(1)), 4, 1);
        Outlook again = new Outlook(year.progress(), year.now().plus(Duration.ofDays(1)), 4, 1);
        for (int run = 0; run < 2; run++) {
            outlook.playOnce();
            again.playOnce();
        }
        Projection projection = outlook.projection();
        assertEquals(projection, again.projection());
        assertEquals(2, projection.runs());
        projection
                .late()
                .ifPresent(late -> assertTrue(!late.isBefore(projection.early().orElseThrow())));
    }

    /** Against Apache Commons Math 3.6.1, whose R_1 is the same definition. */
    @Test
    void thePercentilesOfTheRunsAreThoseOfALibrary() {
        SplittableRandom random = new SplittableRandom(4);
        for (int runs = 1; runs <= 60; runs++) {
            long[] days = random.longs(runs, 0, 500).sorted().toArray();
            double[] numbers = Arrays.stream(days).asDoubleStream().toArray();
            Percentile library = new Percentile().withEstimationType(EstimationType.R_1);
            for (int share : new int[] {10, 50, 90}) {
                assertEquals(library.evaluate(numbers, share), (double) Outlook.smallest(days, share / 100.0), 0);
            }
        }
    }
}
