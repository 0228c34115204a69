// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/** A policy, as {@link TurnFrame} takes it: the same situation and seed always give the same ranking. */
@FunctionalInterface
public interface Ranker {
    /**
     * The ranking for one choice.
     *
     * @param here what the choice looks at
     * @param seed decides free choices
     */
    Ranking rank(ChoiceContext here, long seed);
}
