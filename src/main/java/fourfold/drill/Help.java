package fourfold.drill;

import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.progress.Hint;
import fourfold.progress.Progress;
import fourfold.progress.WrongAnswer;
import java.util.Optional;

/**
 * What is shown beside a fact that is in view.
 *
 * @param depiction its picture; empty where the parent wants none
 * @param mixup the wrong answer that led here, if there was one
 * @param hint a way to the fact from what the child knows
 */
public record Help(Optional<Depiction> depiction, Optional<WrongAnswer> mixup, Optional<Hint> hint) {
    /** Nothing. */
    static final Help NONE = new Help(Optional.empty(), Optional.empty(), Optional.empty());

    /** The help after an answer that was wrong or did not come; {@code before} is what the child had reached then. */
    static Help after(Answer answer, Progress before) {
        Question question = answer.question().orElseThrow();
        return new Help(depiction(before, question), WrongAnswer.of(answer), Hint.to(question, before));
    }

    static Optional<Depiction> depiction(Progress before, Question question) {
        return before.steering().settings().pictures()
                ? Optional.of(Depiction.of(before, question.family()))
                : Optional.empty();
    }
}
