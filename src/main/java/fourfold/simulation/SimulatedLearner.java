package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import java.time.Duration;
import java.time.Instant;

/** One simulated child. Learns from every call of {@link #reply} and {@link #shown}; times never run backwards. */
public interface SimulatedLearner {
    /** Answers a question from memory, or by working it out, or wrongly, or not at all. */
    Reply reply(Question question, Instant askedAt);

    /** Sees a whole fact: when it is introduced, after an error, or in a lesson. */
    void shown(Fact fact, Instant at);

    /**
     * The true chance that the child would type the right answer with the first key within the limit, hands included.
     * For scoring and for policies that may see everything; asking changes nothing.
     */
    double chanceRightWithin(Question question, Instant at, Duration limit);

    /** Copies digits in view; by default 0.8 s to the first key and 0.35 s for each further key, Enter included. */
    default Reply copy(String digits, Instant at) {
        Duration first = Duration.ofMillis(800);
        return new Reply(digits, first, first.plusMillis(350L * digits.length()));
    }
}
