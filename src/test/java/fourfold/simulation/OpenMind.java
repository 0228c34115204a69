// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Question;
import java.time.Duration;
import java.time.Instant;

/** A simulated child whose head can be looked into, so that a ceiling can be measured. No fair policy uses this. */
public interface OpenMind extends SimulatedLearner {
    /**
     * What {@link #chanceRightWithin} would be at {@code later} if the question's trace were recalled once at {@code now}.
     * Asking changes nothing.
     */
    double chanceIfPractised(Question question, Instant now, Instant later, Duration limit);

    /** About how many seconds the question would take, feedback included. */
    double secondsFor(Question question, Instant at);
}
