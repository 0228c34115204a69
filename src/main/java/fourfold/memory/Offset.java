// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * How far one trace lies from what is expected of it, and how sure that is: a Kalman filter of one number that may wander.
 * A value.
 *
 * @param value in the unit of what is expected
 * @param doubt its variance
 * @param most the variance among traces, which the doubt begins with and never exceeds
 */
record Offset(double value, double doubt, double most) {
    /** What the doubt gains with each answer, as a share of the most: a trace is mended or mixed up. Our own choice. */
    private static final double WANDERS = 0.01;

    /** Before any answer, where traces have that standard deviation. */
    static Offset unknown(double spread) {
        return new Offset(0, spread * spread, spread * spread);
    }

    /**
     * With one more observation.
     *
     * @param miss what was seen less what was expected, this offset counted
     * @param variance of that miss, everything in doubt counted; more than {@link #doubt}
     */
    Offset after(double miss, double variance) {
        double surer = doubt - doubt * doubt / variance;
        return new Offset(value + doubt * miss / variance, Math.min(most, surer + WANDERS * most), most);
    }
}
