package fourfold.scheduling;

import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/**
 * The policy the program uses: what is due is what the child's memory would not give quickly enough at the next drill, and
 * of that first what gains most for long per second of practice. The turns are those of {@link TurnFrame}, as for any policy.
 */
public final class LastingGain implements Scheduler {
    private final TurnFrame turns;

    /** The policy with the usual rules. */
    public LastingGain() {
        this(Rules.usual());
    }

    /** The policy with other rules. */
    public LastingGain(Rules rules) {
        turns = new TurnFrame(rules, (here, seed) -> new PracticeValue(here, rules));
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        return turns.next(progress, at, seed);
    }
}
