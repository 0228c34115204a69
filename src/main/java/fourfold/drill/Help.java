// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.progress.Hint;
import fourfold.progress.Progress;
import fourfold.progress.WrongAnswer;
import java.util.List;
import java.util.Optional;

/**
 * What is shown beside a fact that is in view.
 *
 * @param depiction its picture; empty where the parent wants none
 * @param mixup the wrong answer that led here, if there was one
 * @param hint a way to the fact from what the child knows
 * @param unanswered the question that got no answer, if the fact is shown for that: it counts once a key shows that the
 *     child is there
 * @param facts the facts of its family as they are shown; none where nothing is taught
 */
public record Help(
        Optional<Depiction> depiction,
        Optional<WrongAnswer> mixup,
        Optional<Hint> hint,
        Optional<Unanswered> unanswered,
        List<Prompt> facts) {
    public Help {
        facts = List.copyOf(facts);
    }

    /** Nothing. */
    static final Help NONE = with(Optional.empty());

    /** A question from memory that nobody has answered. */
    public record Unanswered(Phase.Asking question, Answer answer) {}

    /** A picture alone. */
    static Help with(Optional<Depiction> depiction) {
        return new Help(depiction, Optional.empty(), Optional.empty(), Optional.empty(), List.of());
    }

    /** The help after an answer that was wrong or did not come; {@code before} is what the child had reached then. */
    static Help after(Answer answer, Progress before) {
        Question question = answer.question().orElseThrow();
        return new Help(
                depiction(before, question),
                WrongAnswer.of(answer),
                Hint.to(question, before),
                Optional.empty(),
                HiddenFactors.signed(question.family(), before));
    }

    /** The same for an answer that did not come, and does not count yet. */
    Help waitingFor(Phase.Asking question, Answer answer) {
        return new Help(depiction, mixup, hint, Optional.of(new Unanswered(question, answer)), facts);
    }

    /** The same when the question has been counted. */
    Help counted() {
        return new Help(depiction, mixup, hint, Optional.empty(), facts);
    }

    static Optional<Depiction> depiction(Progress before, Question question) {
        return before.steering().settings().pictures()
                ? Optional.of(Depiction.of(before, question.family()))
                : Optional.empty();
    }
}
