package fourfold.insight;

import fourfold.log.Answer;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

/** How many questions each drill asked from memory, and how many were answered right, from all answers of a child. */
public final class DrillScores implements Consumer<Answer> {
    /**
     * The score of one drill.
     *
     * @param asked answers from memory
     * @param right the right ones among them
     */
    public record Score(int asked, int right) {
        private Score after(Answer answer) {
            return new Score(asked + 1, right + (answer.isCorrect() ? 1 : 0));
        }
    }

    private static final Score NONE = new Score(0, 0);

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
