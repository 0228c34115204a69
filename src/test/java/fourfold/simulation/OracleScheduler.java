package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Progress;
import fourfold.scheduling.Ranking;
import fourfold.scheduling.Rules;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import fourfold.scheduling.TurnFrame;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;

/**
 * A ceiling: sees the true memory and takes, turn by turn, the largest lasting gain per second. Greedy, so no proof of an
 * upper bound; several kinds of foresight are tried and the best is taken.
 */
final class OracleScheduler implements Scheduler, Ranking {
    private final OpenMind child;
    private final Foresight foresight;
    private final TurnFrame turns;
    private final double[] worth = new double[Trace.COUNT];
    private final boolean[] stale = new boolean[Trace.COUNT];
    private final boolean[] due = new boolean[Trace.COUNT];
    private Optional<UUID> drill = Optional.empty();
    private int noted;

    OracleScheduler(SimulatedLearner learner, Foresight foresight) {
        if (!(learner instanceof OpenMind open)) {
            throw new IllegalArgumentException("an oracle needs a child whose memory can be looked into");
        }
        this.child = open;
        this.foresight = foresight;
        this.turns = new TurnFrame(
                Rules.usual()
                        .withMostWaiting(foresight.mostWaiting())
                        .withMostWeak(Trace.COUNT)
                        .withMostShaky(Families.COUNT),
                (here, seed) -> this);
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        refresh(progress, at);
        return turns.next(progress, at, seed);
    }

    /** Worth changes little within a drill but for what was just met; that is looked at again. */
    private void refresh(Progress progress, Instant at) {
        DrillSoFar soFar = progress.drill().orElseThrow();
        if (!drill.equals(Optional.of(soFar.session().id()))) {
            drill = Optional.of(soFar.session().id());
            noted = 0;
            Arrays.fill(stale, true);
        }
        int fresh = soFar.size() - noted;
        noted = soFar.size();
        for (Answer answer : soFar.newestFirst()) {
            if (fresh-- <= 0) {
                break;
            }
            answer.question().ifPresent(q -> q.family().traces().forEach(t -> stale[t.index()] = true));
        }
        Instant start = soFar.session().startedAt();
        for (Trace trace : Families.traces()) {
            if (stale[trace.index()] && progress.mastery(trace).isMet()) {
                look(trace, start, at);
            }
        }
    }

    private void look(Trace trace, Instant start, Instant at) {
        double gain = 0;
        double soonest = Double.POSITIVE_INFINITY;
        for (Duration horizon : foresight.horizons()) {
            Instant then = start.plus(horizon);
            double without = child.strength(trace, then);
            soonest = Math.min(soonest, horizon.equals(foresight.horizons().get(0)) ? without : soonest);
            gain += value(child.strengthIfPractised(trace, at, then)) - value(without);
        }
        Question question = trace.questions().get(0);
        int i = trace.index();
        worth[i] = gain * trace.questions().size() / child.secondsFor(question, at);
        due[i] = soonest < foresight.dueBelow();
        stale[i] = false;
    }

    private double value(double strength) {
        return -Math.log1p(Math.exp(foresight.enough() - strength));
    }

    @Override
    public boolean isDue(int trace) {
        return true;
    }

    @Override
    public boolean isWaiting(int trace) {
        return due[trace];
    }

    @Override
    public double value(int trace) {
        return worth[trace];
    }
}
