// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * The published equations of activation, in the plain: exact, slow where histories are long, and the yardstick for
 * everything faster. Ages and times are in seconds of the memory's own clock.
 *
 * <p>Source: Pavlik and Anderson 2005, Cognitive Science 29, 559–586 (decay that depends on activation); Anderson and
 * Schooler 1991, Psychological Science 2, 396–408 (sum of powers of ages).
 */
public final class Equations {
    private Equations() {}

    /** p = 1 / (1 + e^((τ − m)/s)). */
    public static double chanceOfRecall(double activation, double threshold, double noise) {
        return logistic((activation - threshold) / noise);
    }

    /** 1 / (1 + e^(−x)). */
    static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    /**
     * The normal distribution function (Abramowitz and Stegun 1964, 26.2.17; error below 7.5·10⁻⁸; from memory, tested
     * against a library).
     */
    static double normalBelow(double z) {
        double size = Math.abs(z);
        double t = 1 / (1 + 0.2316419 * size);
        double polynomial =
                t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        double above = 0.3989422804014327 * Math.exp(-size * size / 2) * polynomial;
        return z > 0 ? 1 - above : above;
    }
}
