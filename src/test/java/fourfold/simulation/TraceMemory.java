// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Question;
import java.util.SplittableRandom;

/** How one trace is kept in a simulated child's head. Times are seconds since the start of the school year. */
interface TraceMemory {
    /** The logit of the chance of recall for a fact of middle difficulty; at least {@link #NOTHING}. */
    double strength(double at);

    /** The fact was recalled, worked out, or seen. */
    void practised(double at, How how);

    /** The same trace once more, to look ahead; practising the copy changes nothing else. */
    TraceMemory copy();

    /** Median seconds of thinking of a child of middle pace who recalls with that strength. */
    default double thinking(double strength) {
        return 0.6 + 0.95 * Math.exp(-0.3 * Math.max(-2, Math.min(8, strength)));
    }

    /** The wrong answer that comes to mind; by default any of those that children give. */
    default int wrongAnswer(Question question, double at, SplittableRandom dice) {
        return WrongAnswers.to(question, dice);
    }

    /** A wrong answer was given. */
    default void missed(double at, int answer) {}

    /** The strength of what was never met. */
    double NOTHING = -6;

    /** What happened to the trace. */
    enum How {
        /** The answer came from memory. */
        RECALLED,
        /** The answer was worked out. */
        WORKED_OUT,
        /** The answer was read. */
        SEEN
    }
}
