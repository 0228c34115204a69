package fourfold.scheduling;

import fourfold.facts.Answer;
import fourfold.facts.Trace;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/**
 * A simple policy to compare with: what has the lowest activation comes first, with one decay for all (Anderson and
 * Schooler 1991, Psychological Science 2, 396–408): the logarithm of the sum of t^(−d) over all times it was met.
 *
 * <p>Unlike the others it keeps its own record, so it has to see a child's drills from the very first on.
 */
public final class LowestActivation implements Scheduler {
    private static final double NEXT_DRILL = 40 * 3600.0;

    private final Rules rules;
    private final double decay;
    private final double enough;
    private final Moments[] met = new Moments[Trace.COUNT];
    private Optional<DrillSoFar> seen = Optional.empty();
    private int counted;

    /**
     * The policy.
     *
     * @param rules of which only those about openings and re-asks matter
     * @param decay the exponent d, 0.5 in the source
     * @param enough a trace waits for its turn while its activation at the next drill would be below this
     */
    public LowestActivation(Rules rules, double decay, double enough) {
        this.rules = rules;
        this.decay = decay;
        this.enough = enough;
        for (int i = 0; i < met.length; i++) {
            met[i] = new Moments();
        }
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        DrillSoFar drill = progress.drill().orElseThrow();
        takeNote(drill);
        Situation here = new Situation(progress, drill, at);
        double[] soon = new double[Trace.COUNT];
        double then = drill.sitting().startedAt().getEpochSecond() + NEXT_DRILL;
        int waiting = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            soon[t] = here.isMet(t) && here.asked.times(t) == 0 ? met[t].activation(then, decay) : 0;
            waiting += here.isMet(t) && here.asked.times(t) == 0 && soon[t] < enough ? 1 : 0;
        }
        int due = waiting;
        Ranking lowest = new Ranking() {
            @Override
            public double of(int trace) {
                return here.asked.times(trace) == 0 ? -soon[trace] : Double.NEGATIVE_INFINITY;
            }

            @Override
            public int waiting() {
                return due;
            }
        };
        return new PlainChoice(here, rules, lowest, seed).turn();
    }

    private void takeNote(DrillSoFar drill) {
        boolean same =
                seen.filter(d -> d.sitting().id().equals(drill.sitting().id())).isPresent();
        int fresh = drill.size() - (same ? counted : 0);
        for (Answer answer : drill.newestFirst()) {
            if (fresh-- <= 0) {
                break;
            }
            answer.question()
                    .ifPresent(q ->
                            met[q.trace().index()].add((double) answer.askedAt().getEpochSecond()));
        }
        seen = Optional.of(drill);
        counted = drill.size();
    }

    /** The times at which a trace was met, those of one hour taken as one with a count. */
    private static final class Moments {
        private static final double HOUR = 3600;
        private double[] times = new double[8];
        private double[] counts = new double[8];
        private int size;

        void add(double at) {
            if (size > 0 && Math.abs(times[size - 1] - at) < HOUR) {
                counts[size - 1]++;
                return;
            }
            if (size == times.length) {
                times = java.util.Arrays.copyOf(times, 2 * size);
                counts = java.util.Arrays.copyOf(counts, 2 * size);
            }
            times[size] = at;
            counts[size++] = 1;
        }

        double activation(double at, double decay) {
            double sum = 1e-9;
            for (int i = 0; i < size; i++) {
                sum += counts[i] * Math.exp(-decay * Math.log(Math.max(1, at - times[i])));
            }
            return Math.log(sum);
        }
    }
}
