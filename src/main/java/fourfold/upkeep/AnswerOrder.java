// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.log.Answer;
import fourfold.log.Problem;
import fourfold.log.Reason;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

/** Positions count up from 1 without a gap, and no answer is asked before the one it follows. */
final class AnswerOrder {
    private final Map<UUID, Instant> begun;
    private final Map<UUID, Answer> last = new HashMap<>();
    private final Advance advance;
    private final Consumer<Problem> found;

    /**
     * For one child's answers.
     *
     * @param begun when each drill began
     * @param advance is told how many drills were looked at
     * @param found takes what is wrong
     */
    AnswerOrder(Map<UUID, Instant> begun, Advance advance, Consumer<Problem> found) {
        this.begun = begun;
        this.found = found;
        this.advance = advance;
    }

    /** Looks at the next answer, in the order of {@link fourfold.store.Answers#read}. */
    void next(Answer answer) {
        Answer before = last.put(answer.drill(), answer);
        advance.to(last.size(), begun.size());
        int expected = before == null ? 1 : before.position() + 1;
        if (answer.position() != expected) {
            found.accept(Problem.of(Reason.ANSWER_MISSING, answer.drill(), expected));
        }
        Instant earliest = before == null ? begun.getOrDefault(answer.drill(), Instant.MIN) : before.askedAt();
        if (answer.askedAt().isBefore(earliest)) {
            found.accept(Problem.of(Reason.ANSWER_EARLY, answer.position(), answer.drill()));
        }
    }
}
