// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * The published equations of activation, in the plain: exact, slow where histories are long, and the yardstick for
 * everything faster. Ages and times are in seconds of the memory's own clock.
 *
 * <p>Source: Pavlik and Anderson 2005, Cognitive Science 29, 559–586 (decay that depends on activation); Anderson and
 * Schooler 1991, Psychological Science 2, 396–408 (sum of powers of ages).
 */
public final class PublishedEquations {
    private PublishedEquations() {}

    /** m = ln Σ age_k^(−d_k); negative infinity where there was no presentation. */
    public static double activation(double[] ages, double[] decays) {
        double sum = 0;
        for (int k = 0; k < ages.length; k++) {
            sum += Math.pow(ages[k], -decays[k]);
        }
        return Math.log(sum);
    }

    /** d = c·e^m + α: what is strong when it is presented fades faster afterwards. */
    public static double decay(double scale, double activation, double rate) {
        return scale * Math.exp(activation) + rate;
    }

    /**
     * The decays of presentations at the given times, each from the activation the earlier ones had left at its moment.
     *
     * @param times rising
     */
    public static double[] decays(double[] times, double scale, double rate) {
        double[] decays = new double[times.length];
        for (int k = 0; k < times.length; k++) {
            decays[k] = decay(scale, activationAt(times[k], times, decays, k), rate);
        }
        return decays;
    }

    /** The activation that the first {@code count} presentations leave at a later time. */
    public static double activationAt(double at, double[] times, double[] decays, int count) {
        double[] ages = new double[count];
        double[] own = new double[count];
        for (int k = 0; k < count; k++) {
            ages[k] = at - times[k];
            own[k] = decays[k];
        }
        return activation(ages, own);
    }

    /** Seconds until the answer is recalled: F·e^(−m) and a fixed time. */
    public static double latency(double activation, double factor, double fixed) {
        return factor * Math.exp(-activation) + fixed;
    }
}
