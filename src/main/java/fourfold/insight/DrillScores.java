// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.log.Answer;
import fourfold.log.Purpose;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/** How many questions each drill asked from memory, and how many were answered right, from all answers of a child. */
public final class DrillScores implements Consumer<Answer> {
    /**
     * The score of one drill.
     *
     * @param asked answers from memory
     * @param right the right ones among them
     * @param given where they were given, if it was away from the keys: on paper or aloud
     */
    public record Score(int asked, int right, Optional<Purpose> given) {
        private Score after(Answer answer) {
            Optional<Purpose> away = Optional.of(answer.purpose()).filter(p -> !p.isTyped());
            return new Score(asked + 1, right + (answer.isCorrect() ? 1 : 0), away);
        }
    }

    private static final Score NONE = new Score(0, 0, Optional.empty());

    private final Map<UUID, Score> scores = new HashMap<>();

    @Override
    public void accept(Answer answer) {
        if (answer.purpose().isFromMemory()) {
            scores.put(answer.drill(), of(answer.drill()).after(answer));
        }
    }

    /** The score of a drill; 0 of 0 for one that asked nothing from memory. */
    public Score of(UUID drill) {
        return scores.getOrDefault(drill, NONE);
    }
}
