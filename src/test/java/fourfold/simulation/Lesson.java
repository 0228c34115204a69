// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.outlook.Learner;
import fourfold.outlook.Reply;
import java.time.Instant;
import java.util.List;

/**
 * A lesson at the family table: some facts are shown, then questions are asked aloud, and after a miss the whole fact is
 * shown.
 *
 * @param at when it begins
 * @param shown one after the other
 * @param practised asked after that, one after the other
 */
public record Lesson(Instant at, List<Fact> shown, List<Question> practised) {
    private static final int SECONDS_TO_LOOK = 5;
    private static final int SECONDS_BETWEEN = 3;

    public Lesson {
        shown = List.copyOf(shown);
        practised = List.copyOf(practised);
    }

    /** Teaches it; gives how many of the questions were answered rightly. */
    public int teach(Learner child) {
        Instant now = at;
        int right = 0;
        for (Fact fact : shown) {
            child.shown(fact, now);
            now = now.plusSeconds(SECONDS_TO_LOOK);
        }
        for (Question question : practised) {
            Reply reply = child.reply(question, now);
            now = now.plus(reply.whole()).plusSeconds(SECONDS_BETWEEN);
            if (reply.typed().equals(Integer.toString(question.expected()))) {
                right++;
            } else {
                child.shown(question.fact(), now);
                now = now.plusSeconds(SECONDS_TO_LOOK);
            }
        }
        return right;
    }
}
