// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;

/** Somebody who can be played through a drill. Learns from what it sees and does; times never run backwards. */
public interface Learner {
    /** Answers a question from memory, or by working it out, or wrongly, or not at all. */
    Reply reply(Question question, Instant askedAt);

    /** Sees a whole fact: when it is introduced, after an error, or in a lesson. */
    void shown(Fact fact, Instant at);

    /** What the program knows of the learner after one more answer was kept; only one who is made of that looks. */
    default void known(Progress progress) {}

    /** Copies digits in view; by default 0.8 s to the first key and 0.35 s for each further key, Enter included. */
    default Reply copy(String digits, Instant at) {
        Duration first = Duration.ofMillis(800);
        return new Reply(digits, first, first.plusMillis(350L * digits.length()));
    }
}
