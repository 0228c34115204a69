// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * How a right answer within a limit depends on activation, for one child at one time: recalled in time, or worked out in
 * time. What does not depend on activation is reckoned once.
 */
final class Recall {
    private final Parameters parameters;
    private final double logLimit;
    private final Speed.Level level;
    private final double workedOut;

    /**
     * Of a child.
     *
     * @param seconds of thinking that are in time, above 0
     * @param level how fast a recalled answer comes, and how far answers scatter
     */
    Recall(double seconds, Speed.Level level, Parameters parameters) {
        this.parameters = parameters;
        this.logLimit = Math.log(seconds);
        this.level = level;
        this.workedOut = Equations.normalBelow((logLimit - parameters.logWorkingOut) / parameters.workingSpread);
    }

    /** The chance of a right answer in time, 0 to 1, before the child's own record corrects it. */
    double chance(double activation) {
        double recalled = Equations.chanceOfRecall(activation, parameters.threshold, parameters.noise);
        double logMedian = level.middle() - parameters.speedUp * activation;
        // Whoever would recall more slowly than work it out, works it out; without this the chance could rise with
        // time.
        double inTime =
                Math.max(workedOut, recalled == 0 ? 0 : Equations.normalBelow((logLimit - logMedian) / level.spread()));
        return recalled * (1 - parameters.slips) * inTime + (1 - recalled) * parameters.workedOut * workedOut;
    }
}
