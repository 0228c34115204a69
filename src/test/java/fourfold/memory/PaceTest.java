package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Guards against a child's own record that corrects the forecasts the wrong way. */
class PaceTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final double SPEED_UP = USUAL.speedUp;
    private static final double TRUST = USUAL.paceTrust;
    private static final double LOOKED_BACK = USUAL.paceMemory;

    @Property(tries = 100)
    void thePaceIsTheMeanOfTheUsualOneAndOfWhatWasSeen(
            @ForAll @IntRange(min = 1, max = 150) int answers,
            @ForAll @DoubleRange(min = -1, max = 2) double logSeconds,
            @ForAll @DoubleRange(min = -1, max = 2) double activation) {
        Pace pace = Pace.usual(USUAL);
        for (int i = 0; i < answers; i++) {
            pace = pace.afterTime(logSeconds, activation, USUAL);
        }
        double seen = logSeconds + SPEED_UP * activation;
        assertEquals(
                (TRUST * USUAL.usualPace + answers * seen) / (TRUST + answers),
                pace.speed().level(),
                1e-9);
        assertEquals(TRUST + answers, pace.speed().answers(), 1e-9);
    }

    @Test
    void afterManyAnswersThePaceLooksBackOnSoManyAndNoMore() {
        Pace pace = new Pace(new Pace.Speed(1, LOOKED_BACK), new Pace.Correction(0, 1, 0));
        Pace after = pace.afterTime(0, 0, USUAL);
        assertEquals(LOOKED_BACK, after.speed().answers());
        assertEquals(1 - 1 / LOOKED_BACK, after.speed().level(), 1e-12);
    }

    @Test
    void beforeAnyRecordAForecastStandsAndAFreshOneIsLowered() {
        Pace pace = Pace.usual(USUAL);
        assertEquals(0.3, pace.corrected(0.3, false), 1e-12);
        // Log odds of one half, less 1.5: 1 / (1 + e^1.5), worked by hand.
        assertEquals(0.182426, pace.corrected(0.5, true), 1e-6);
        // Log odds beyond six count as six: no forecast is certain.
        assertEquals(1 / (1 + Math.exp(-6)), pace.corrected(1, false), 1e-12);
        assertEquals(1 / (1 + Math.exp(6)), pace.corrected(0, false), 1e-12);
    }

    @Property(tries = 100)
    void whatCameTrueRaisesForecastsAndWhatFailedLowersThem(
            @ForAll @DoubleRange(min = 0.02, max = 0.98) double chance,
            @ForAll @DoubleRange(min = -1, max = 1) double offset,
            @ForAll @DoubleRange(min = 0.5, max = 1.5) double slope) {
        Pace pace = pace(new Pace.Correction(offset, slope, -1));
        double before = pace.corrected(chance, false);
        Pace up = pace.afterOutcome(chance, true, USUAL);
        Pace down = pace.afterOutcome(chance, false, USUAL);
        assertTrue(up.corrected(chance, false) > before);
        assertTrue(down.corrected(chance, false) < before);
        // The gradient of the log score: the offset moves by what was missed, the slope by that times the log odds.
        double odds = Math.max(-3, Math.min(3, Math.log(chance / (1 - chance))));
        assertEquals(offset + USUAL.correction * (1 - before), up.correction().offset(), 1e-12);
        assertEquals(offset - USUAL.correction * before, down.correction().offset(), 1e-12);
        assertEquals(
                slope + USUAL.steepness * (1 - before) * odds, up.correction().slope(), 1e-12);
        assertEquals(slope - USUAL.steepness * before * odds, down.correction().slope(), 1e-12);
        assertEquals(pace.correction().fresh(), up.correction().fresh());
    }

    @Test
    void theSlopeStaysWithinItsEnds() {
        assertEquals(
                2,
                pace(new Pace.Correction(0, 2, 0))
                        .afterOutcome(0.9, true, USUAL)
                        .correction()
                        .slope(),
                1e-12);
        assertEquals(
                0.2,
                pace(new Pace.Correction(0, 0.2, 0))
                        .afterOutcome(0.9, false, USUAL)
                        .correction()
                        .slope(),
                1e-12);
    }

    @Property(tries = 100)
    void freshFactsAreCorrectedByFreshFactsAloneAndNeverUpwards(
            @ForAll @DoubleRange(min = 0.02, max = 0.98) double chance,
            @ForAll @DoubleRange(min = -2, max = -0.1) double fresh) {
        Pace pace = pace(new Pace.Correction(0.3, 1.1, fresh));
        double before = pace.corrected(chance, true);
        assertEquals(
                Math.min(0, fresh + 0.02 * (1 - before)),
                pace.afterFresh(chance, true).correction().fresh(),
                1e-12);
        assertEquals(
                fresh - 0.02 * before,
                pace.afterFresh(chance, false).correction().fresh(),
                1e-12);
        assertEquals(
                pace.corrected(chance, false), pace.afterFresh(chance, true).corrected(chance, false), 0);
        assertEquals(
                0,
                pace(new Pace.Correction(0, 1, -1e-6))
                        .afterFresh(0.1, true)
                        .correction()
                        .fresh());
    }

    @Property(tries = 100)
    void undoingTheCorrectionGivesTheForecastBack(
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double chance,
            @ForAll @DoubleRange(min = -0.5, max = 0.5) double offset,
            @ForAll @DoubleRange(min = 0.5, max = 1.5) double slope) {
        Pace pace = pace(new Pace.Correction(offset, slope, -1));
        assertEquals(chance, pace.uncorrected(pace.corrected(chance, false)), 1e-9);
    }

    @Test
    void aChanceThatNoForecastCanReachIsBelowNoughtOrAboveOne() {
        Pace doubting = pace(new Pace.Correction(-7, 1, 0));
        assertTrue(doubting.uncorrected(0.5) > 1);
        Pace hopeful = pace(new Pace.Correction(7, 1, 0));
        assertTrue(hopeful.uncorrected(0.5) < 0);
        assertTrue(pace(new Pace.Correction(5.9, 1, 0)).uncorrected(0.5) > 0);
    }

    private static Pace pace(Pace.Correction correction) {
        return new Pace(new Pace.Speed(0, 5), correction);
    }
}
