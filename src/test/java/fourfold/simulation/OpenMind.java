package fourfold.simulation;

import fourfold.facts.Question;
import fourfold.facts.Trace;
import java.time.Instant;

/** A simulated child whose head can be looked into, so that a ceiling can be measured. No fair policy uses this. */
interface OpenMind extends SimulatedLearner {
    /** The logit of the chance of recall of a trace, everything counted. */
    double strength(Trace trace, Instant at);

    /** What {@link #strength} would be at {@code later} if the trace were recalled once at {@code now}. */
    double strengthIfPractised(Trace trace, Instant now, Instant later);

    /** About how many seconds the question would take, feedback included. */
    double secondsFor(Question question, Instant at);
}
