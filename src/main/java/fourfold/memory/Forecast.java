// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import java.time.Duration;

/**
 * What is to be expected of one trace at one moment, and how sure that is. All times are times of thinking: the hands' own
 * time is outside, so a limit on the response time has to be shortened by the motor time first.
 */
public final class Forecast {
    private final double activation;
    private final double unmet;
    private final double days;
    private final Speed.Level level;
    private final Offset surer;
    private final Correction correction;
    private final Parameters parameters;

    /**
     * A forecast.
     *
     * @param strength e to the power of the activation
     * @param unmet chance that a trace never met here is known all the same; 0 for one that was met
     * @param standing the trace
     */
    Forecast(double strength, double unmet, Standing standing, Pace pace, Parameters parameters) {
        this.activation = Math.log(strength);
        this.unmet = unmet;
        this.days = standing.days;
        this.level = pace.speed().level(standing.index, standing.trace.slower());
        this.surer = standing.trace.surer();
        this.correction = pace.correction();
        this.parameters = parameters;
    }

    /**
     * One trace at one moment.
     *
     * @param days since it was last presented; 0 if it never was
     */
    record Standing(int index, TraceState trace, double days) {}

    /** The logarithm of the trace's strength, about −4 to 4; negative infinity for what was never met. */
    public double activation() {
        return activation;
    }

    /** The chance that the fact is recalled, 0 to 1, before the child's own record corrects anything. */
    public double chanceRecalled() {
        return Equations.chanceOfRecall(activation, parameters.threshold, parameters.noise);
    }

    /** The chance that the answer is right, recalled or worked out, 0 to 1. */
    public double chanceRight() {
        double recalled = chanceRecalled();
        return Math.max(unmet, recalled * (1 - parameters.slips) + (1 - recalled) * parameters.workedOut);
    }

    /** The median time of thinking, at most the time it takes to work the answer out. */
    public Duration medianThinking() {
        double seconds = Math.min(parameters.workingOut, Math.exp(level.middle() - parameters.speedUp * activation));
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }

    /**
     * The chance that the answer is right and thought of within the limit, 0 to 1, corrected by the child's own record and
     * averaged over all that is in doubt about the child, the trace and the gap.
     *
     * @param limit of thinking alone
     */
    public double chanceRightWithin(Duration limit) {
        return chanceRightWithin(limit.toNanos() / 1e9);
    }

    /** As {@link #chanceRightWithin(Duration)}, with the limit in seconds. */
    public double chanceRightWithin(double limitSeconds) {
        return Math.max(unmet, correction.chance(plainChanceWithin(limitSeconds), days, surer));
    }

    /**
     * How sure {@link #chanceRightWithin} is: the standard deviation of its log odds, above 0. It shrinks with each first
     * answer of a day, of the trace and of the child, and is larger the longer the trace was not asked.
     */
    public double spread() {
        return Math.sqrt(correction.doubt(days, surer));
    }

    /** How fast it comes if it is recalled. */
    Speed.Level level() {
        return level;
    }

    /** The chance before the child's own record corrects it. */
    double plainChanceWithin(double limitSeconds) {
        return new Recall(limitSeconds, level, parameters).chance(activation);
    }
}
