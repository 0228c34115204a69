package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;


import fourfold.progress.Projection;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Guards against a projection that hangs on chance alone, runs backwards, or guesses from nothing. */
class OutlookTest {
    private static SchoolYear weeks(int weeks, long seed) {
        SchoolYear year = new SchoolYear(new TwoStrengthKind().create(seed), new LastingGain(), seed, a -> {});
        year.run(weeks * 4, true, (slot, next) -> {});
        return year;
    }

    @Test
    void theRangeIsInOrderTheSameForTheSameSeedAndAheadOfToday() {
        SchoolYear year = weeks(20, 3);

        Outlook outlook = new Outlook(year.progress(), year.now().plus(Duration.ofDays(1)), 4, 1);
        Outlook again = new Outlook(year.progress(), year.now().plus(Duration.ofDays(1)), 4, 1);
        for (int run = 0; run < 3; run++) {
            outlook.playOnce();
        }
                + year.progress().families(Mastery.FLUENT) + " " + outlook.projection());
        Projection projection = outlook.projection();
        assertEquals(projection, again.projection());
        assertTrue(
                projection.early().orElseThrow().compareTo(projection.middle().orElseThrow()) <= 0);
        assertTrue(Outlook.isPossible(year.progress()));
    }
}
