// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * The chance of recall, and the two curves that chances are made of.
 *
 * <p>Source of the chance: Pavlik and Anderson 2005, Cognitive Science 29, 559–586.
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
