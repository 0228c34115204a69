// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * What holds for a child as a whole: how fast recalled answers come, and how the child's own record corrects the
 * forecasts. A value; every change makes a new one.
 *
 * @param level ln seconds of thinking at activation 0
 * @param weight answers the level rests on
 * @param offset A of the corrected log odds A + B·x
 * @param slope B of the corrected log odds A + B·x
 * @param fresh what is added to them for a fact answered fewer than {@link #FRESH} times from memory
 */
record Pace(double level, double weight, double offset, double slope, double fresh) {
    /** After this many answers from memory a fact is no longer fresh. Our own choice. */
    static final int FRESH = 3;

    /** Before any record: what was only just met is known less surely than its activation says. Our own choice. */
    private static final double USUAL_FRESH = -1.5;

    /** How far one more outcome moves it. Our own choice. */
    private static final double FRESH_STEP = 0.02;

    private static final double MOST_LOG_ODDS = 6;
    private static final double STEEP_LOG_ODDS = 3;
    private static final double LEAST_SLOPE = 0.2;
    private static final double MOST_SLOPE = 2;

    static Pace usual(Parameters parameters) {
        return new Pace(parameters.usualPace, parameters.paceTrust, 0, 1, USUAL_FRESH);
    }

    /** With one more right answer. */
    Pace afterTime(double logSeconds, double activation, Parameters parameters) {
        double more = Math.min(weight + 1, parameters.paceMemory);
        double at = logSeconds + parameters.speedUp * activation;
        return new Pace(level + (at - level) / more, more, offset, slope, fresh);
    }

    /** With one more forecast of a fresh fact that came true or did not. */
    Pace afterFresh(double chance, boolean came) {
        double miss = (came ? 1 : 0) - corrected(chance, true);
        return new Pace(level, weight, offset, slope, Math.min(0, fresh + FRESH_STEP * miss));
    }

    /** With one more forecast that came true or did not. */
    Pace afterOutcome(double chance, boolean came, Parameters parameters) {
        double x = logOdds(chance);
        double miss = (came ? 1 : 0) - corrected(chance, false);
        double steep = Math.max(-STEEP_LOG_ODDS, Math.min(STEEP_LOG_ODDS, x));
        double newSlope = slope + parameters.steepness * miss * steep;
        return new Pace(
                level,
                weight,
                offset + parameters.correction * miss,
                Math.max(LEAST_SLOPE, Math.min(MOST_SLOPE, newSlope)),
                fresh);
    }

    /** The model's chance after the correction. */
    double corrected(double chance, boolean isFresh) {
        return Equations.logistic(offset + slope * logOdds(chance) + (isFresh ? fresh : 0));
    }

    /** The plain chance that is corrected to this one; below 0 or above 1 where no chance is. */
    double uncorrected(double chance) {
        double x = (Math.log(chance / (1 - chance)) - offset) / slope;
        if (Math.abs(x) > MOST_LOG_ODDS) {
            return x < 0 ? -1 : 2;
        }
        return Equations.logistic(x);
    }

    private static double logOdds(double chance) {
        double x = Math.log(chance / (1 - chance));
        return Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, x));
    }
}
