// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * What is to be expected of one trace at one moment. All times are times of thinking: the hands' own time is outside, so
 * a limit on the response time has to be shortened by the motor time first.
 */
public final class Forecast {
    private final double activation;
    private final Pace pace;
    private final Parameters parameters;
    private final double unmet;
    private final boolean fresh;

    /**
     * A forecast.
     *
     * @param fresh whether the trace was answered only a few times from memory
     * @param unmet chance that a trace never met here is known all the same; 0 for one that was met
     */
    Forecast(double strength, boolean fresh, double unmet, Pace pace, Parameters parameters) {
        this.activation = Math.log(strength);
        this.fresh = fresh;
        this.unmet = unmet;
        this.pace = pace;
        this.parameters = parameters;
    }

    /** The logarithm of the trace's strength, about −4 to 4; negative infinity for what was never met. */
    public double activation() {
        return activation;
    }

    /** The chance that the answer is right and thought of within so many seconds, corrected by the child's own record. */
    public double chanceRightWithin(double limitSeconds) {
        return Math.max(unmet, pace.corrected(plainChanceWithin(limitSeconds), fresh));
    }

    /** The chance before the child's own record corrects it. */
    double plainChanceWithin(double limitSeconds) {
        return new Recall(limitSeconds, pace, parameters).chance(activation);
    }
}
