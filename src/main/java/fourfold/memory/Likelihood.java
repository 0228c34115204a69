// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * How likely one answer is, as a function of the activation it met: recalled and log-normal in time, or worked out in its
 * own time, or missed. A missed answer says nothing by its time: the recall it might have been is censored.
 */
final class Likelihood {
    private static final double ROOT_TWO_PI = 2.5066282746310002;

    /** No answer is impossible; this keeps one odd answer from settling everything. Our own choice. */
    private static final double LEAST = 1e-3;

    private final boolean right;
    private final double logThinking;
    private final Speed.Level level;
    private final double worked;
    private final Parameters parameters;

    /**
     * Of an answer.
     *
     * @param logThinking ln seconds of thinking; not looked at if the answer was not right
     * @param level how fast a recalled answer comes, and how far answers scatter
     */
    Likelihood(boolean right, double logThinking, Speed.Level level, Parameters parameters) {
        this.right = right;
        this.logThinking = logThinking;
        this.level = level;
        this.parameters = parameters;
        this.worked = right
                ? parameters.workedOut * heeded(logThinking - parameters.logWorkingOut, parameters.workingSpread)
                : 1 - parameters.workedOut;
    }

    /** The likelihood at an activation; more than zero. */
    double at(double activation) {
        double recalled = Equations.chanceOfRecall(activation, parameters.threshold, parameters.noise);
        if (!right) {
            return recalled * parameters.slips + (1 - recalled) * worked + LEAST;
        }
        return recalledRight(recalled, activation) + (1 - recalled) * worked + LEAST;
    }

    /** The chance that a right answer was recalled and not worked out, 0 to 1, at an activation. */
    double shareRecalled(double activation) {
        double recalled = Equations.chanceOfRecall(activation, parameters.threshold, parameters.noise);
        double byRecall = recalledRight(recalled, activation);
        return byRecall / (byRecall + (1 - recalled) * worked + LEAST);
    }

    private double recalledRight(double recalled, double activation) {
        double off = logThinking - level.middle() + parameters.speedUp * activation;
        return recalled < 1e-9 ? 0 : recalled * (1 - parameters.slips) * heeded(off, level.spread());
    }

    /** The log-normal density, tempered where times are to count for less: at 0 every time is as likely. */
    private double heeded(double off, double spread) {
        double z = off / spread;
        double heed = parameters.heedTimes;
        return heed == 1
                ? Math.exp(-z * z / 2) / (spread * ROOT_TWO_PI)
                : Math.exp(-heed * z * z / 2) / Math.pow(spread * ROOT_TWO_PI, heed);
    }
}
