// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/** Chooses what to ask. The same progress, instant and seed always give the same turn. */
@FunctionalInterface
public interface Scheduler {
    /**
     * The next turn of the drill that is going on.
     *
     * @param progress what the child has reached, with a drill begun
     * @param at now
     * @param seed decides free choices, such as the order of two factors
     * @return the turn; empty when the drill is over or there is nothing to ask
     */
    Optional<Turn> next(Progress progress, Instant at, long seed);
}
