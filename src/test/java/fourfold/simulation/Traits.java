// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.SplittableRandom;

/**
 * What one simulated child is like, whatever its memory. The spread of pace is measured (SD of ln time between children of
 * 8 to 15 .34 to .36, Suárez-Pellicioni, Lytle, Younger and Booth 2019, Scientific Data 6:190040); the rest is set by
 * hand within plausible bounds.
 *
 * @param ability added to every strength; mean −0.75, spread 0.7
 * @param pace factor on times of thinking, ln spread 0.48: the hands vary less, the whole about .35
 * @param firstKey seconds from seeing a digit to typing it, about 0.45 to 1.3
 * @param nextKey seconds for each further key, Enter included, about 0.25 to 0.8
 * @param slips share of recalled answers mistyped and not noticed, 0.05 to 0.5 %
 * @param guesses share of unrecalled answers that are guessed wrong, 20 to 45 %
 * @param givesUp share of the other unrecalled answers that stay empty, 0 to 10 %
 * @param form how much strength goes up and down from day to day, as a standard deviation
 * @param spread of ln thinking time from answer to answer
 * @param tiring how much slower each minute after the fifth is, 0 to 6 %
 * @param tablesKnown how many tables were met before the year, 0 to 5 in the order of teaching; 0 for every fourth child
 * @param lessonsBefore how many lessons each of them had, 3 to 8
 */
record Traits(
        double ability,
        double pace,
        double firstKey,
        double nextKey,
        double slips,
        double guesses,
        double givesUp,
        double form,
        double spread,
        double tiring,
        int tablesKnown,
        int lessonsBefore) {

    /** A child like most. */
    static Traits usual(SplittableRandom dice) {
        double pace = 0.48 * within(dice.nextGaussian(), 2.2);
        return new Traits(
                -0.75 + 0.7 * within(dice.nextGaussian(), 2),
                Math.exp(pace),
                0.75 * Math.exp(0.6 * pace + 0.15 * within(dice.nextGaussian(), 2)),
                0.42 * Math.exp(0.6 * pace + 0.15 * within(dice.nextGaussian(), 2)),
                dice.nextDouble(0.0005, 0.005),
                dice.nextDouble(0.2, 0.45),
                dice.nextDouble(0, 0.1),
                0.2,
                dice.nextDouble(0.5, 0.65),
                dice.nextDouble(0, 0.06),
                dice.nextDouble() < 0.25 ? 0 : dice.nextInt(1, 6),
                dice.nextInt(3, 9));
    }

    /** Slower, and other from day to day and from answer to answer. */
    static Traits uneven(SplittableRandom dice) {
        Traits t = usual(dice);
        return new Traits(
                t.ability,
                1.3 * t.pace,
                1.15 * t.firstKey,
                1.15 * t.nextKey,
                2 * t.slips,
                t.guesses,
                0.1 + t.givesUp,
                0.7,
                0.08 + t.spread,
                2 * t.tiring,
                t.tablesKnown,
                t.lessonsBefore);
    }

    /** The same child with other strengths. */
    Traits abler(double by) {
        return new Traits(
                ability + by,
                pace,
                firstKey,
                nextKey,
                slips,
                guesses,
                givesUp,
                form,
                spread,
                tiring,
                tablesKnown,
                lessonsBefore);
    }

    /** Values beyond {@code most} in size are set to it, so that no child is out of this world. */
    static double within(double x, double most) {
        return Math.max(-most, Math.min(most, x));
    }
}
