// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Instant;
import java.util.Optional;

/**
 * A policy in the frame of that day, at work for one child from its first answer on. It follows the answers by itself and
 * looks at nothing that the program has folded.
 */
public final class FrozenScheduler implements Scheduler {
    private final TurnFrame turns;
    private final fourfold.simulation.policy20261127.Progress known;

    /**
     * A policy that has seen nothing yet.
     *
     * @param rules how many may wait and how far apart turns are
     * @param policy ranks what may be asked
     * @param constants of the memory it looks through
     */
    public FrozenScheduler(Rules rules, Ranker policy, Parameters constants) {
        this.turns = new TurnFrame(rules, policy);
        this.known = new fourfold.simulation.policy20261127.Progress(Steering.NONE, constants);
    }

    /** The program's policy of that day. */
    public static FrozenScheduler lastingGain() {
        Rules rules = Rules.usual();
        return new FrozenScheduler(rules, (here, seed) -> new PracticeValue(here, rules), Parameters.usual());
    }

    /**
     * The next turn.
     *
     * @throws IllegalStateException if this child has answers that were not seen here
     */
    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        known.follow(progress.drill().orElseThrow());
        if (known.answers() != progress.answers()) {
            throw new IllegalStateException("a frozen policy must see a child's every drill, from the first");
        }
        return turns.next(known, at, seed);
    }

    /** The chance, as this policy sees it, that an answer asked then is right and within the child's limit. */
    public double chanceQuick(int trace, Instant at) {
        return known.memory().chanceQuick(trace, at.toEpochMilli());
    }
}
