// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Family;

/**
 * What may not follow what, whatever a policy wishes: no question twice in a row, no product twice in a row, one family
 * not at once again, a fact missed twice not again before the next drill, and families that are easily mixed up kept apart
 * while one of them is shaky or was missed in this drill.
 *
 * <p>Neighbours are kept apart because a recent answer comes back as an error (Campbell and Tarling 1996, Memory and
 * Cognition 24, 156–172); the distance of three questions is our own choice.
 */
final class GuardRails {
    /** An inverse comes at least this many questions after its product. */
    static final int APART = 3;

    /** A fact missed so often in one drill rests until the next. */
    static final int MOST_ERRORS = 2;

    private GuardRails() {}

    /** Whether two families share a factor and their products lie within twice that factor of each other. */
    static boolean areNeighbours(Family a, Family b) {
        if (a.equals(b)) {
            return false;
        }
        int distance = Math.abs(a.product() - b.product());
        return (b.contains(a.low()) && distance <= 2 * a.low()) || (b.contains(a.high()) && distance <= 2 * a.high());
    }
}
