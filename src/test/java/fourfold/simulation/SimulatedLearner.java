// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Question;
import fourfold.outlook.Learner;
import java.time.Duration;
import java.time.Instant;

/** One simulated child: a learner whose true memory is known. */
public interface SimulatedLearner extends Learner {
    /**
     * The true chance that the child would type the right answer with the first key within the limit, hands included.
     * For scoring and for policies that may see everything; asking changes nothing.
     */
    double chanceRightWithin(Question question, Instant at, Duration limit);
}
