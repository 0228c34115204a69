// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;

/** Guards against an approximation that drifts from the sum of powers it stands for. */
class FadingSumTest {
    /** Both are stated in the class itself. */
    private static final double BOUND = 1.5e-3;

    private static final double STEEP_BOUND = 6e-3;

    private static final double TEN_YEARS_OF_CLOCK = 1e7;

    @Property(tries = 300)
    void one_power_stays_within_the_bound_from_a_second_to_ten_years(
            @ForAll @DoubleRange(min = 0.03, max = 1.5) double decay,
            @ForAll @DoubleRange(min = 0, max = 16.1) double logAge) {
        double age = Math.min(TEN_YEARS_OF_CLOCK, Math.exp(logAge));
        double[] terms = new double[FadingSum.TERMS];
        FadingSum.add(terms, 0, decay, 1);
        double exact = Math.pow(age, -decay);
        assertEquals(exact, FadingSum.read(terms, age), (decay <= 0.8 ? BOUND : STEEP_BOUND) * exact);
    }

    @Test
    void five_thousand_presentations_stay_within_the_bound() {
        SplittableRandom dice = new SplittableRandom(5);
        int count = 5000;
        double[] times = new double[count];
        double[] decays = new double[count];
        double[] terms = new double[FadingSum.TERMS];
        double[] left = new double[FadingSum.TERMS];
        double now = 0;
        for (int k = 0; k < count; k++) {
            double gap = Math.exp(dice.nextDouble() * 10);
            now += gap;
            FadingSum.fade(gap, left);
            FadingSum.apply(terms, 0, left);
            times[k] = now;
            decays[k] = 0.06 + dice.nextDouble() * 0.7;
            FadingSum.add(terms, 0, decays[k], 1);
        }
        for (double later : new double[] {1, 60, 3600, 86_400, 1e6}) {
            double exact = Math.exp(PublishedEquations.activationAt(now + later, times, decays, count));
            assertEquals(exact, FadingSum.read(terms, later), BOUND * exact);
        }
    }

    @Property(tries = 200)
    void the_reciprocal_gamma_function_agrees_with_commons_math(@ForAll @DoubleRange(min = 0.01, max = 1.9) double d) {
        assertEquals(1 / Gamma.gamma(d), FadingSum.reciprocalGamma(d), 1e-9);
    }

    @Property(tries = 200)
    void the_normal_distribution_agrees_with_commons_math(@ForAll @DoubleRange(min = -8, max = 8) double z) {
        assertEquals(new NormalDistribution().cumulativeProbability(z), Equations.normalBelow(z), 7.5e-8);
        assertTrue(Equations.normalBelow(Double.NEGATIVE_INFINITY) == 0);
    }
}
