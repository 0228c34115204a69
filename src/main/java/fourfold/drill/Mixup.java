package fourfold.drill;

import fourfold.facts.Answer;
import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.Optional;

/**
 * What a wrong answer belongs to, where that is clear: most errors in multiplication are right answers to a neighbour that
 * shares a factor (Campbell and Graham 1985, Canadian Journal of Psychology 39, 338–366); adding instead is the other clear
 * one.
 *
 * @param kind which mix-up
 * @param fits the question that the answer fits; for a sum the question that was asked
 */
public record Mixup(Kind kind, Question fits) {
    /** Kinds of clear mix-ups. */
    public enum Kind {
        /** The answer fits another fact with the same factor or divisor. */
        NEIGHBOUR,
        /** The numbers were added. */
        SUM
    }

    /** A neighbour further away is no clear case (common practice, no source). */
    private static final int FURTHEST = 2;

    /** The mix-up of a wrong answer; empty if it is not clear. */
    public static Optional<Mixup> of(Answer answer) {
        if (answer.isCorrect() || answer.isMissing()) {
            return Optional.empty();
        }
        int typed = Integer.parseInt(answer.typed());
        return answer.question().flatMap(q -> of(q, typed));
    }

    static Optional<Mixup> of(Question question, int typed) {
        if (question.operation() == Operation.DIVIDE) {
            boolean near = typed >= 1
                    && typed <= Families.LARGEST_FACTOR
                    && Math.abs(typed - question.expected()) <= FURTHEST
                    && typed != question.expected();
            return near
                    ? Optional.of(new Mixup(
                            Kind.NEIGHBOUR, new Question(Operation.DIVIDE, typed * question.right(), question.right())))
                    : Optional.empty();
        }
        for (int off = 1; off <= FURTHEST; off++) {
            for (int sign : new int[] {-1, 1}) {
                for (Question near :
                        new Question[] {neighbour(question, off * sign, 0), neighbour(question, 0, off * sign)}) {
                    if (!near.equals(question) && near.expected() == typed) {
                        return Optional.of(new Mixup(Kind.NEIGHBOUR, near));
                    }
                }
            }
        }
        return typed == question.left() + question.right()
                ? Optional.of(new Mixup(Kind.SUM, question))
                : Optional.empty();
    }

    /** The product with one factor moved; the question itself where there is no such fact. */
    private static Question neighbour(Question question, int left, int right) {
        int a = question.left() + left;
        int b = question.right() + right;
        boolean known = Math.min(a, b) >= 1 && Math.max(a, b) <= Families.LARGEST_FACTOR;
        return known ? Question.product(a, b) : question;
    }
}
