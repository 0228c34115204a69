// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a speed that is not the child's: of other kinds of facts, of what was worked out, of odd answers. */
class SpeedTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final Offset NONE = Offset.unknown(0);

    private static double middle(Speed speed, Trace trace) {
        return speed.level(trace.index(), NONE).middle();
    }

    /** Ln seconds: .038 for ten more of product, .1 for a division, −.15 for what goes by rule and for squares. */
    @ParameterizedTest
    @CsvSource({"5x6, 0", "5x8, 0.038", "7x8, 0.0988", "2x5, -0.076", "1x7, -0.15", "9x10, -0.15", "6x6, -0.1272"})
    void beforeAnyAnswerTheKindOfFactSaysWhatIsUsual(String family, double expected) {
        Family f = Family.parse(family);
        assertEquals(expected, middle(Speed.usual(USUAL), Trace.product(f)), 1e-12);
        assertEquals(expected + 0.1, middle(Speed.usual(USUAL), Trace.quotient(f, f.high())), 1e-12);
    }

    @Test
    void anOrdinaryFactIsTheMeanOfAll() {
        Speed speed = Speed.usual(USUAL);
        double mean = Families.traces().stream()
                .mapToDouble(t -> middle(speed, t))
                .average()
                .orElseThrow();
        assertEquals(mean, speed.ordinary().middle(), 1e-12);
    }

    private static Speed after(Speed speed, Trace trace, int answers, double logSeconds, double share) {
        Speed learned = speed;
        for (int i = 0; i < answers; i++) {
            learned = learned.after(trace.index(), NONE, logSeconds, share).speed();
        }
        return learned;
    }

    @Property(tries = 60)
    void theSpeedComesNearWhatIsSeenAndASurerAnswerCountsMore(
            @ForAll @DoubleRange(min = -1, max = 1) double logSeconds,
            @ForAll @DoubleRange(min = 0.1, max = 0.9) double share) {
        Trace trace = Trace.product(Family.of(5, 6));
        Speed usual = Speed.usual(USUAL);
        double little = middle(after(usual, trace, 1, logSeconds, share), trace);
        double more = middle(after(usual, trace, 1, logSeconds, 1), trace);
        assertTrue(Math.abs(little) <= Math.abs(more) && Math.abs(more) <= Math.abs(logSeconds));
        assertEquals(logSeconds, middle(after(usual, trace, 40, logSeconds, 1), trace), 0.1);
        // Less than a twentieth of a chance to have been recalled: nothing is learned.
        assertEquals(0, middle(after(usual, trace, 40, logSeconds, 0.049), trace), 0);
    }

    @Test
    void aSlowerChildIsSlowerWithWhatWasNeverAskedAndDivisionsTeachMostOfDivisions() {
        Trace division = Trace.quotient(Family.of(6, 7), 6);
        Speed learned = after(Speed.usual(USUAL), division, 30, 1, 1);
        double product = middle(learned, Trace.product(Family.of(4, 7)));
        double other = middle(learned, Trace.quotient(Family.of(4, 7), 4));
        assertTrue(product > 0.5 && other > product + 0.1, product + " " + other);
    }

    @Test
    void anOddAnswerCountsAsTwoAndAHalfStandardDeviationsOff() {
        Trace trace = Trace.product(Family.of(5, 6));
        Speed usual = Speed.usual(USUAL);
        double far = middle(after(usual, trace, 1, 4, 1), trace);
        assertEquals(far, middle(after(usual, trace, 1, 40, 1), trace), 1e-12);
        // .4² of one answer and .4² of the child at 5 × 6: half of the way that counts.
        assertEquals(0.5 * 2.5 * Math.sqrt(0.32), far, 1e-9);
    }

    /** The scatter is learned too: its square root comes near that of the answers, and no doubt about the median is left. */
    @Property(tries = 20)
    void howFarAnswersScatterIsLearned(@ForAll long seed, @ForAll @DoubleRange(min = 0.25, max = 0.7) double spread) {
        Trace trace = Trace.product(Family.of(5, 6));
        SplittableRandom dice = new SplittableRandom(seed);
        Speed speed = Speed.usual(USUAL);
        for (int i = 0; i < 1000; i++) {
            speed = speed.after(trace.index(), NONE, 0.3 + spread * dice.nextGaussian(), 1)
                    .speed();
        }
        assertEquals(spread, speed.level(trace.index(), NONE).spread(), 0.2 * spread);
    }

    @Test
    void aTraceOfItsOwnTimeMovesItsOffsetAndTheDoubtCounts() {
        Trace trace = Trace.product(Family.of(5, 6));
        Offset own = Offset.unknown(0.15);
        Speed usual = Speed.usual(USUAL);
        assertEquals(
                Math.sqrt(0.16 + 0.16 + 0.0225), usual.level(trace.index(), own).spread(), 1e-12);
        Offset slow = usual.after(trace.index(), own, 0.5, 1).own();
        Offset quick = usual.after(trace.index(), own, -0.5, 1).own();
        assertTrue(slow.value() > 0 && quick.value() == -slow.value() && slow.doubt() < own.doubt());
    }
}
