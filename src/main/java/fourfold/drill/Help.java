package fourfold.drill;

import fourfold.facts.Answer;
import fourfold.facts.Question;
import fourfold.progress.Progress;
import java.util.Optional;

/**
 * What stands beside a fact that is in view.
 *
 * @param depiction its picture; empty where the parent wants none
 * @param mistake the wrong answer that led here, if there was one
 */
public record Help(Optional<Depiction> depiction, Optional<Answer> mistake) {
    /** Nothing. */
    static final Help NONE = new Help(Optional.empty(), Optional.empty());

    /** The help after an answer that was wrong or did not come; {@code before} is where the child stood then. */
    static Help after(Answer answer, Progress before) {
        Optional<Depiction> depiction = answer.question().flatMap(q -> depiction(before, q));
        return new Help(depiction, answer.isMissing() ? Optional.empty() : Optional.of(answer));
    }

    static Optional<Depiction> depiction(Progress before, Question question) {
        return before.steering().settings().pictures()
                ? Optional.of(Depiction.of(before, question.family()))
                : Optional.empty();
    }
}
