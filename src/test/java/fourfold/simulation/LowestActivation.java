// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.policy20261127.ChoiceContext;
import fourfold.simulation.policy20261127.Ranking;
import fourfold.simulation.policy20261127.Rules;
import java.time.Instant;

/**
 * A simple policy to compare with: what would have the lowest activation at the next drill comes first. It is meant for a
 * memory with one decay for all (Anderson and Schooler 1991, Psychological Science 2, 396–408): the logarithm of the sum
 * of t^(−d) over all times it was met; see {@link fourfold.simulation.policy20261127.Parameters#oneDecay}.
 */
final class LowestActivation implements Ranking {
    private final ChoiceContext here;
    private final double[] soon;
    private final double enough;

    /**
     * The ranking.
     *
     * @param enough new families wait for a trace while its activation at the next drill would be below this
     */
    LowestActivation(ChoiceContext here, double enough) {
        this.here = here;
        this.enough = enough;
        Instant begun = here.progress().drill().orElseThrow().session().startedAt();
        Instant next = begun.plus(Rules.usual().nextDrill());
        this.soon = here.progress().memory().activations(next.toEpochMilli());
    }

    @Override
    public boolean isDue(int trace) {
        return here.times(trace) == 0;
    }

    @Override
    public boolean isWaiting(int trace) {
        return isDue(trace) && isWeak(trace);
    }

    @Override
    public boolean isWeak(int trace) {
        return soon[trace] < enough;
    }

    @Override
    public double value(int trace) {
        return -soon[trace];
    }
}
