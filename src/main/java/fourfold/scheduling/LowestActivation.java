package fourfold.scheduling;

import fourfold.facts.Trace;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/**
 * A simple policy to compare with: what would have the lowest activation at the next drill comes first. It is meant for a
 * memory with one decay for all (Anderson and Schooler 1991, Psychological Science 2, 396–408): the logarithm of the sum
 * of t^(−d) over all times it was met; see {@link fourfold.memory.Parameters#oneDecay}.
 */
public final class LowestActivation implements Scheduler {
    private final Rules rules;
    private final double enough;

    /**
     * The policy.
     *
     * @param rules of which only those about openings and re-asks matter
     * @param enough a trace waits for its turn while its activation at the next drill would be below this
     */
    public LowestActivation(Rules rules, double enough) {
        this.rules = rules;
        this.enough = enough;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        Situation here = new Situation(progress, progress.drill().orElseThrow(), at);
        Instant then = here.drill.sitting().startedAt().plus(rules.nextDrill());
        double[] soon = here.memory.activations(then.toEpochMilli());
        Ranking lowest = new Ranking() {
            @Override
            public double of(int trace) {
                return here.asked.times(trace) == 0 ? -soon[trace] : Double.NEGATIVE_INFINITY;
            }

            @Override
            public int waiting() {
                return below(here, soon, true);
            }

            @Override
            public int weak() {
                return below(here, soon, false);
            }
        };
        return new PlainChoice(here, rules, lowest, seed).turn();
    }

    private int below(Situation here, double[] soon, boolean notAskedOnly) {
        int count = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            boolean counts = here.isMet(t) && !(notAskedOnly && here.asked.times(t) > 0);
            count += counts && soon[t] < enough ? 1 : 0;
        }
        return count;
    }
}
