package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.progress.Projection;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Guards against a projection that hangs on chance alone, runs backwards, or guesses from nothing. */
class OutlookTest {
    @Test
    void theRangeIsInOrderAndTheSameForTheSameSeed() {
        SchoolYear year = new SchoolYear(new TwoStrengthKind().create(3), new LastingGain(), 3, a -> {});
        assertTrue(!Outlook.isPossible(year.progress()));
        year.run(22 * 4, true, (slot, next) -> {});
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
}
