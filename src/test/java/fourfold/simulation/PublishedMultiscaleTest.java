// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

/**
 * Guards against simulated children whose memory only bears the name of the multiscale context model.
 *
 * <p>The multiscale context model: Mozer, Pashler, Cepeda, Lindsey and Vul 2009, NIPS 22, 1321-1329. Steps 1 after a
 * failure and 9 after a success are the paper's, from memory. Values with two pools were worked out apart from this program from the
 * paper's equations; those with a hundred too, with the numbers that Anderson and others
 * 2023, Psychological Review 130, 1137-1166, fitted: mu .032, nu 1.111, omega .704, xi .978.
 */
class PublishedMultiscaleTest {
    private static final double EXACT = 1e-6;

    /** Pools, each with the time it fades by a factor e in, and its share; shares sum up to the whole. */
    private static final class Pools {
        private final double[] timescales;
        private final double[] shares;

        Pools(double[] timescales, double... shares) {
            this.timescales = timescales;
            this.shares = shares;
        }

        static Pools growing(int count, double quickest, double growth, double whole, double shareGrowth) {
            double[] timescales = new double[count];
            double[] shares = new double[count];
            for (int i = 0; i < count; i++) {
                timescales[i] = quickest * Math.pow(growth, i + FIRST_POOL);
                shares[i] = Math.pow(shareGrowth, i + FIRST_POOL);
            }
            double sum = Arrays.stream(shares).sum();
            return new Pools(
                    timescales, Arrays.stream(shares).map(s -> whole * s / sum).toArray());
        }

        double[] faded(double[] levels, double seconds) {
            double[] faded = levels.clone();
            for (int i = 0; i < faded.length; i++) {
                faded[i] *= Math.exp(-seconds / timescales[i]);
            }
            return faded;
        }

        /** The strength of the first {@code count} pools together, over their shares. */
        double pooled(double[] levels, int count) {
            double sum = 0;
            double part = 0;
            for (int i = 0; i < count; i++) {
                sum += shares[i] * levels[i];
                part += shares[i];
            }
            return sum / part;
        }

        double strength(double[] levels) {
            return pooled(levels, levels.length) * Arrays.stream(shares).sum();
        }

        double[] studied(double[] levels, double step) {
            double[] studied = levels.clone();
            for (int i = 0; i < studied.length; i++) {
                studied[i] += step * Math.max(0, 1 - pooled(levels, i + 1));
            }
            return studied;
        }
    }

    /** The first pool's time is mu times nu: counted from one, or the values are not the worked ones. */
    private static final int FIRST_POOL = 1;

    private static final Pools TWO = new Pools(new double[] {1, 10}, 0.6, 0.4);
    private static final Pools HUNDRED = Pools.growing(100, 0.032, 1.111, 0.704, 0.978);

    /** The program's class with those pools, a threshold of 0 and a noise of 1: its strength is the pooled one. */
    private static TraceMemory multiscale(Pools pools) {
        double share = pools.shares[1] / pools.shares[0];
        return new MultiscaleMemory(new MultiscaleMemory.Numbers(1, 9, share, 0, 1), pools.timescales);
    }

    @Example
    void two_pools_reach_the_values_worked_out_from_the_equations() {
        double[] later = TWO.faded(new double[] {1, 1}, 2);
        assertEquals(0.135335, later[0], EXACT);
        assertEquals(0.818731, later[1], EXACT);
        assertEquals(0.408693, TWO.strength(later), EXACT);
        double[] failed = TWO.studied(later, 1);
        assertEquals(1, failed[0], EXACT);
        assertEquals(1.410037, failed[1], EXACT);
        double[] recalled = TWO.studied(later, 9);
        assertEquals(7.917318, recalled[0], EXACT);
        assertEquals(6.140490, recalled[1], EXACT);
        assertEquals(0.346135, TWO.strength(TWO.faded(failed, 5)), EXACT);
        assertEquals(1.521766, TWO.strength(TWO.faded(recalled, 5)), EXACT);
    }

    @Example
    void the_multiscale_memory_reaches_the_values_of_two_pools() {
        TraceMemory failed = multiscale(TWO);
        failed.practised(0, TraceMemory.How.WORKED_OUT);
        assertEquals(0.408693, failed.strength(2), EXACT);
        TraceMemory recalled = failed.copy();
        failed.practised(2, TraceMemory.How.WORKED_OUT);
        assertEquals(0.346135, failed.strength(7), EXACT);
        recalled.practised(2, TraceMemory.How.RECALLED);
        assertEquals(1.521766, recalled.strength(7), EXACT);
    }

    @Example
    void a_hundred_pools_reach_the_values_of_one_and_two_studies() {
        studies(0.267627, 1, 0);
        studies(0.131739, 10, 0);
        studies(0.049184, 100, 0);
        studies(0.219051, 11, 0, 1);
        studies(0.226022, 15, 0, 5);
        studies(0.220545, 20, 0, 10);
        studies(0.080901, 101, 0, 1);
        studies(0.088509, 110, 0, 10);
        studies(0.084925, 150, 0, 50);
    }

    /** The paper's strength is the pooled one times the whole of the shares, which the program folds into its threshold. */
    private static void studies(double strength, double at, double... times) {
        double whole = Arrays.stream(HUNDRED.shares).sum();
        TraceMemory memory = multiscale(HUNDRED);
        for (double time : times) {
            memory.practised(time, TraceMemory.How.WORKED_OUT);
        }
        assertEquals(strength, whole * memory.strength(at), EXACT);
        assertEquals(strength, plainMultiscale(HUNDRED, times, new boolean[times.length], at), EXACT);
    }

    private static double plainMultiscale(Pools pools, double[] times, boolean[] recalled, double at) {
        double[] levels = new double[pools.timescales.length];
        double clock = times[0];
        for (int i = 0; i < times.length; i++) {
            levels = pools.studied(pools.faded(levels, times[i] - clock), recalled[i] ? 9 : 1);
            clock = times[i];
        }
        return pools.strength(pools.faded(levels, at - clock));
    }

    @Property(tries = 100)
    void the_multiscale_memory_is_the_model_for_any_twenty_presentations(
            @ForAll @Size(min = 1, max = 20) List<@DoubleRange(min = 0, max = 500) Double> gaps,
            @ForAll @DoubleRange(min = 0, max = 2_000) double age,
            @ForAll @Size(20) List<Boolean> successes) {
        double[] times = times(gaps);
        boolean[] recalled = new boolean[times.length];
        TraceMemory memory = multiscale(HUNDRED);
        for (int i = 0; i < times.length; i++) {
            recalled[i] = successes.get(i);
            memory.practised(times[i], successes.get(i) ? TraceMemory.How.RECALLED : TraceMemory.How.SEEN);
        }
        double at = times[times.length - 1] + age;
        double whole = Arrays.stream(HUNDRED.shares).sum();
        assertEquals(plainMultiscale(HUNDRED, times, recalled, at), whole * memory.strength(at), EXACT);
    }

    private static double[] times(List<Double> gaps) {
        double[] times = new double[gaps.size()];
        double clock = 0;
        for (int i = 0; i < times.length; i++) {
            clock += gaps.get(i);
            times[i] = clock;
        }
        return times;
    }
}
