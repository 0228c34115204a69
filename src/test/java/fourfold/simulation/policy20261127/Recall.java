// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * How a right answer within a limit depends on activation, for one child at one time: recalled in time, or worked out in
 * time. What does not depend on activation is reckoned once.
 */
final class Recall {
    private static final double LEAST_ACTIVATION = -8;
    private static final double MOST_ACTIVATION = 4;
    private static final double CLOSE = 0.002;

    private final Parameters parameters;
    private final double logLimit;
    private final double level;
    private final double workedOut;

    /**
     * Of a child.
     *
     * @param seconds of thinking that are in time, above 0
     */
    Recall(double seconds, Pace pace, Parameters parameters) {
        this.parameters = parameters;
        this.logLimit = Math.log(seconds);
        this.level = pace.level();
        this.workedOut = Equations.normalBelow((logLimit - Math.log(parameters.workingOut)) / parameters.workingSpread);
    }

    /** The chance of a right answer in time, 0 to 1, before the child's own record corrects it. */
    double chance(double activation) {
        double recalled = Equations.chanceOfRecall(activation, parameters.threshold, parameters.noise);
        double logMedian = level - parameters.speedUp * activation;
        // Whoever would recall more slowly than work it out, works it out; without this the chance could rise with
        // time.
        double inTime = Math.max(
                workedOut, recalled == 0 ? 0 : Equations.normalBelow((logLimit - logMedian) / parameters.spread));
        return recalled * (1 - parameters.slips) * inTime + (1 - recalled) * parameters.workedOut * workedOut;
    }

    /** The activation at which that is the chance, to within 0.002; between −8 and 4, whatever the chance. */
    double activationFor(double chance) {
        double low = LEAST_ACTIVATION;
        double high = MOST_ACTIVATION;
        while (high - low > CLOSE) {
            double middle = (low + high) / 2;
            if (chance(middle) < chance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
