// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;
import fourfold.simulation.policy20261127.ChoiceContext;
import fourfold.simulation.policy20261127.Ranking;
import java.util.SplittableRandom;

/** A simple policy to compare with: anything met, at random, and no new family waits for anything. */
final class AtRandom implements Ranking {
    private final double[] worth;

    AtRandom(ChoiceContext here, long seed) {
        worth = new SplittableRandom(seed * 1009 + here.turns())
                .doubles(Trace.COUNT)
                .toArray();
    }

    @Override
    public boolean isDue(int trace) {
        return true;
    }

    @Override
    public boolean isWaiting(int trace) {
        return false;
    }

    @Override
    public double value(int trace) {
        return worth[trace];
    }
}
