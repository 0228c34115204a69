// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/**
 * The policy the program uses. What is due is what the child's memory would not give quickly enough at the next drill, and
 * of that first what gains most for long per second of practice. A family joins when the child can carry one more, by its
 * own last weeks. When nothing useful is left the drill ends. {@link Choice} has the order of turns, {@link Rails} what may
 * not follow what.
 */
public final class LastingGain implements Scheduler {
    private final Rules rules;

    /** The policy with the usual rules. */
    public LastingGain() {
        this(Rules.usual());
    }

    /** The policy with other rules. */
    public LastingGain(Rules rules) {
        this.rules = rules;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        DrillSoFar drill = progress.drill().orElseThrow(() -> new IllegalArgumentException("no drill is going on"));
        return new Choice(rules, new ChoiceContext(progress, drill, at, seed)).turn();
    }
}
