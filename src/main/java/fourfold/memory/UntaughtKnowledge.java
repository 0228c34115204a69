// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.Families;
import fourfold.facts.Family;

/**
 * How likely a child knows a family that was never taught here: one ability for the child, one difficulty for each family,
 * and a logistic curve between them (Rasch 1960, Probabilistic Models for Some Intelligence and Attainment Tests). Each
 * product asked before it was taught moves the ability, and so the chances of all other families. Immutable.
 *
 * <p>Difficulties are our own choice, after what is commonly found: greater products are harder, fives and twos easier,
 * squares a little, ones and tens follow rules.
 */
final class UntaughtKnowledge {
    private static final int ABILITIES = 25;
    private static final double LOWEST = -5;
    private static final double STEP = 0.6;

    /** Standard deviation of abilities before any record: nearly anything is possible. Our own choice. */
    private static final double SPREAD = 3;

    /** How steep the curve is, log odds for one unit. Our own choice. */
    private static final double STEEP = 1.5;

    /** A product known is missed, and one not known is hit, this often. Our own choice. */
    private static final double LAPSES = 0.04;

    /** How much of the first uncertainty comes back with each lesson: a child goes on learning elsewhere. Our own choice. */
    private static final double DRIFT = 0.01;

    private static final double[][] CHANCES = chances();

    /** Of a child of whom nothing is known yet. */
    static final UntaughtKnowledge NOTHING_KNOWN = new UntaughtKnowledge(before());

    private final double[] weights;

    private UntaughtKnowledge(double[] weights) {
        this.weights = weights;
    }

    /** With a product asked before its family was taught. */
    UntaughtKnowledge afterProbe(int family, boolean known) {
        double[] next = new double[ABILITIES];
        double sum = 0;
        for (int i = 0; i < ABILITIES; i++) {
            double chance = LAPSES + (1 - 2 * LAPSES) * CHANCES[family][i];
            next[i] = weights[i] * (known ? chance : 1 - chance);
            sum += next[i];
        }
        for (int i = 0; i < ABILITIES; i++) {
            next[i] /= sum;
        }
        return new UntaughtKnowledge(next);
    }

    /** With a family taught: what was found out is a little less sure. */
    UntaughtKnowledge afterLesson() {
        double[] next = new double[ABILITIES];
        for (int i = 0; i < ABILITIES; i++) {
            next[i] = weights[i] + DRIFT * (NOTHING_KNOWN.weights[i] - weights[i]);
        }
        return new UntaughtKnowledge(next);
    }

    /** The chance, 0 to 1, that the family with that index is known. */
    double chance(int family) {
        double chance = 0;
        for (int i = 0; i < ABILITIES; i++) {
            chance += weights[i] * CHANCES[family][i];
        }
        return chance;
    }

    private static double[] before() {
        double[] weights = new double[ABILITIES];
        double sum = 0;
        for (int i = 0; i < ABILITIES; i++) {
            double z = (LOWEST + STEP * i) / SPREAD;
            weights[i] = Math.exp(-z * z / 2);
            sum += weights[i];
        }
        for (int i = 0; i < ABILITIES; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    private static double[][] chances() {
        double[][] chances = new double[Families.COUNT][ABILITIES];
        for (Family family : Families.all()) {
            for (int i = 0; i < ABILITIES; i++) {
                double ability = LOWEST + STEP * i;
                chances[family.index()][i] = Equations.logistic(STEEP * (ability - difficulty(family)));
            }
        }
        return chances;
    }

    /** From −3 for the ones to 6.8 for 9 × 9: one unit for every twelve of the product, less where something helps. */
    private static double difficulty(Family family) {
        if (family.contains(1)) {
            return -3;
        }
        if (family.contains(10)) {
            return -2;
        }
        double fives = family.contains(5) ? 0.7 : 0;
        double twos = family.contains(2) ? 0.3 : 0;
        return family.product() / 12.0 - 1 - fives - twos - (family.isSquare() ? 0.5 : 0);
    }
}
