// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/** The standard normal distribution. */
final class Normal {
    private Normal() {}

    /** The chance to lie below z (Abramowitz and Stegun 1964, 7.1.26; error under 2e-7). */
    static double below(double z) {
        double x = Math.abs(z) / Math.sqrt(2);
        double t = 1 / (1 + 0.3275911 * x);
        double poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
        double upper = poly * Math.exp(-x * x) / 2;
        return z < 0 ? upper : 1 - upper;
    }
}
