package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.scheduling.Turn;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Placeholder. */
final class OracleScheduler implements Scheduler {
    OracleScheduler(SimulatedLearner learner, Foresight foresight) {}
    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        return Optional.empty();
    }
}
