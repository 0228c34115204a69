package fourfold.scheduling;

import fourfold.facts.Trace;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/** A simple policy to compare with: anything met, at random; a new family whenever the openings' pace allows one. */
public final class AtRandom implements Scheduler {
    private final Rules rules;

    /** The policy; of the rules only those about openings and re-asks matter. */
    public AtRandom(Rules rules) {
        this.rules = rules;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        Situation here = new Situation(progress, progress.drill().orElseThrow(), at);
        long place = (long) here.asked.turns() * Trace.COUNT;
        Ranking chance = new Ranking() {
            @Override
            public double of(int trace) {
                return Mixing.of(seed, place + trace);
            }

            @Override
            public int waiting() {
                return 0;
            }
        };
        return new PlainChoice(here, rules, chance, seed).turn();
    }
}
