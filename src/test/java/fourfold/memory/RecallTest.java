// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against chances and times that do not follow from the activation they are forecast from. */
class RecallTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final Pace PACE = Pace.usual(USUAL);
    private static final Speed.Level LEVEL = new Speed.Level(0, USUAL.spread);

    /** Of 5 × 6, whose kind makes it neither quicker nor slower. */
    private static final int TRACE = Trace.product(Family.of(5, 6)).index();

    private static final NormalDistribution NORMAL = new NormalDistribution();

    private static Forecast forecast(double activation) {
        Forecast.Standing standing = new Forecast.Standing(TRACE, new TraceState(USUAL), 1);
        return new Forecast(Math.exp(activation), 0, standing, PACE, USUAL);
    }

    /** What is not recalled may be worked out, and what is recalled need not come in time: both by the library. */
    @ParameterizedTest
    @CsvSource({"0.5", "1", "3", "7", "20"})
    void inTimeIsWhatIsRecalledOrWorkedOutWithinTheLimit(double seconds) {
        Recall recall = new Recall(seconds, LEVEL, USUAL);
        double workedOut =
                NORMAL.cumulativeProbability((Math.log(seconds) - Math.log(USUAL.workingOut)) / USUAL.workingSpread);
        assertEquals(USUAL.workedOut * workedOut, recall.chance(-30), 1e-6);
        double strong = 3;
        double quick = NORMAL.cumulativeProbability((Math.log(seconds) + USUAL.speedUp * strong) / USUAL.spread);
        double recalled = Equations.chanceOfRecall(strong, USUAL.threshold, USUAL.noise);
        assertEquals(
                recalled * (1 - USUAL.slips) * Math.max(workedOut, quick)
                        + (1 - recalled) * USUAL.workedOut * workedOut,
                recall.chance(strong),
                1e-6);
    }

    @Test
    void aFactIsRightByRecallOrByWorkingOut() {
        assertEquals(USUAL.workedOut, forecast(-30).chanceRight(), 1e-9);
        assertEquals(1 - USUAL.slips, forecast(30).chanceRight(), 1e-9);
        assertEquals(
                (1 - USUAL.slips + USUAL.workedOut) / 2,
                forecast(USUAL.threshold).chanceRight(),
                1e-9);
    }

    @Test
    void theMedianTimeFallsWithActivationAndIsNeverLongerThanWorkingOut() {
        assertEquals(Math.exp(-USUAL.speedUp * 2), forecast(2).medianThinking().toNanos() / 1e9, 1e-6);
        assertEquals(Math.exp(USUAL.speedUp), forecast(-1).medianThinking().toNanos() / 1e9, 1e-6);
        assertEquals(USUAL.workingOut, forecast(-30).medianThinking().toNanos() / 1e9, 1e-6);
        assertEquals(
                forecast(1).chanceRightWithin(2.5), forecast(1).chanceRightWithin(Duration.ofMillis(2_500)), 1e-12);
        assertTrue(forecast(1).chanceRightWithin(2.5) > forecast(1).chanceRightWithin(0.5));
    }

    /** One more presentation adds one more power of its age, with the decay of what it met. */
    @Property(tries = 50)
    void practiceForeseenAddsOnePresentation(
            @ForAll @IntRange(min = 1, max = 200) int hours, @ForAll @IntRange(min = 1, max = 60) int days) {
        Question asked = Question.product(7, 8);
        int trace = asked.traceIndex();
        Memory memory = Memory.blank(USUAL);
        Instant at = Given.START;
        for (int i = 0; i < 4; i++) {
            memory = memory.after(Given.right(asked, at, 1), MotorTime.unknown());
            at = at.plus(Duration.ofHours(5));
        }
        long practised = at.plus(Duration.ofHours(hours)).toEpochMilli();
        long later = practised + Duration.ofDays(days).toMillis();
        double met = Math.min(Math.exp(USUAL.strongest), Math.exp(memory.activation(trace, practised)));
        double age = Duration.ofDays(days).toSeconds() * USUAL.betweenDrills;
        double gained = Math.pow(age, -(memory.rate(asked.trace()) + USUAL.decayScale * met));
        assertEquals(
                Math.exp(memory.activation(trace, later)) + gained,
                Math.exp(memory.activationAfterPractice(trace, practised, later)),
                1e-9);
    }

    /** Five copies in no order: their median is 700 and 1500 ms. */
    @Test
    void theHandsTimeIsTheMedianOfTheCopiesInWhateverOrderTheyCame() {
        MotorTime hands = MotorTime.unknown();
        long[] firsts = {900, 500, 700, 1100, 600};
        for (int i = 0; i < firsts.length; i++) {
            hands = hands.after(Given.copy(42, Given.START.plusSeconds(i), firsts[i], firsts[i] + 800));
        }
        assertEquals(Duration.ofMillis(700), hands.firstKey(42, Surface.TERMINAL));
        assertEquals(Duration.ofMillis(1_500), hands.whole(42, Surface.TERMINAL));
    }

    @Test
    void aHundredHasThreeDigitsAndNinetyNineHasTwo() {
        MotorTime hands = MotorTime.unknown();
        assertTrue(hands.whole(100, Surface.TERMINAL).compareTo(hands.whole(99, Surface.TERMINAL)) > 0);
        assertTrue(hands.whole(10, Surface.TERMINAL).compareTo(hands.whole(9, Surface.TERMINAL)) > 0);
        assertEquals(hands.whole(10, Surface.TERMINAL), hands.whole(99, Surface.TERMINAL));
    }
}
