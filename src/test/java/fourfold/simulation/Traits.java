package fourfold.simulation;

import java.util.SplittableRandom;

/**
 * What one simulated child is like, whatever its memory. All numbers set by hand within plausible bounds.
 *
 * @param ability added to every strength; mean −0.4, spread 0.4
 * @param pace factor on thinking times, about 0.75 to 1.35
 * @param firstKey seconds from seeing a digit to typing it, 0.6 to 1.0
 * @param nextKey seconds for each further key, Enter included, 0.35 to 0.6
 * @param slips share of recalled answers mistyped, 2 to 3 %
 * @param guesses share of unrecalled answers that are guessed wrong, 20 to 45 %
 * @param givesUp share of the other unrecalled answers that stay empty, 0 to 10 %
 * @param knowsEasyTables whether the tables of 1, 2, 5 and 10 were met before the year; every other child
 */
record Traits(
        double ability,
        double pace,
        double firstKey,
        double nextKey,
        double slips,
        double guesses,
        double givesUp,
        boolean knowsEasyTables) {

    static Traits drawn(SplittableRandom dice, long seed) {
        return new Traits(
                -0.4 + 0.4 * within(dice.nextGaussian(), 2),
                Math.exp(0.15 * within(dice.nextGaussian(), 2)),
                dice.nextDouble(0.6, 1.0),
                dice.nextDouble(0.35, 0.6),
                dice.nextDouble(0.02, 0.03),
                dice.nextDouble(0.2, 0.45),
                dice.nextDouble(0, 0.1),
                seed % 2 == 0);
    }

    /** Values beyond {@code most} in size are set to it, so that no child is out of this world. */
    static double within(double x, double most) {
        return Math.max(-most, Math.min(most, x));
    }
}
