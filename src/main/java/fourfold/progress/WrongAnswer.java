// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import java.util.Locale;
import java.util.Optional;

/**
 * What a wrong answer looks like, and the fact it belongs to. Most errors in products are the product of another fact
 * with one of the operands, often a neighbour in the table; errors of another operation and digits written in the wrong
 * order come next (Campbell and Graham 1985, Canadian Journal of Psychology 39, 338–366; Campbell 1997, Memory and
 * Cognition 25, 1–10; from memory). Which kind is named where several fit is our own choice: the nearest first.
 *
 * @param question what was asked
 * @param typed what was typed, 0 to 9999
 * @param kind what it looks like
 * @param fits the fact that what was typed would be right for, where there is one
 */
public record WrongAnswer(Question question, int typed, Kind kind, Optional<Fact> fits) {
    /** Kinds of wrong answers. */
    public enum Kind {
        /** The right answer of the neighbour in the table: one factor is one too large or too small. */
        NEIGHBOUR,
        /** The sum of the two numbers in place of their product, or their difference in place of the quotient. */
        OTHER_OPERATION,
        /** The right answer of another fact with the same number: a multiple of an operand. */
        SAME_TABLE,
        /** The digits of the right answer the other way round. */
        DIGITS_SWAPPED,
        /** The product of two other numbers. */
        OTHER_TABLE,
        /** Nothing that shows where it came from. */
        OTHER;

        /** Its name in texts and files. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What an answer looks like; empty if it is right, missing or to no question. */
    public static Optional<WrongAnswer> of(Answer answer) {
        if (answer.isCorrect() || answer.isMissing()) {
            return Optional.empty();
        }
        return answer.question().map(q -> of(q, Integer.parseInt(answer.typed())));
    }

    /**
     * What a wrong number looks like.
     *
     * @throws IllegalArgumentException if the number is the right one
     */
    public static WrongAnswer of(Question question, int typed) {
        if (typed == question.expected()) {
            throw new IllegalArgumentException(typed + " is right for " + question);
        }
        Optional<Fact> fits = question.operation() == Operation.MULTIPLY
                ? ofProduct(question.left(), question.right(), typed)
                : ofQuotient(question.right(), typed);
        return new WrongAnswer(question, typed, kind(question, typed, fits), fits);
    }

    /** A slip that the child mended before Enter: the right answer, after a digit was taken back. */
    public static boolean isMended(Answer answer) {
        return answer.isCorrect() && answer.erasures() > 0 && answer.question().isPresent();
    }

    private static Kind kind(Question question, int typed, Optional<Fact> fits) {
        if (fits.filter(f -> isNeighbour(question, f)).isPresent()) {
            return Kind.NEIGHBOUR;
        }
        boolean product = question.operation() == Operation.MULTIPLY;
        int other = product ? question.left() + question.right() : question.left() - question.right();
        if (typed == other) {
            return Kind.OTHER_OPERATION;
        }
        if (fits.filter(f -> sharesANumber(question, f)).isPresent()) {
            return Kind.SAME_TABLE;
        }
        int expected = question.expected();
        if (expected >= 10 && expected < 100 && typed == expected % 10 * 10 + expected / 10) {
            return Kind.DIGITS_SWAPPED;
        }
        return fits.isPresent() ? Kind.OTHER_TABLE : Kind.OTHER;
    }

    /** The product that was typed, with the same left number if possible, else the same right one, else any. */
    private static Optional<Fact> ofProduct(int left, int right, int typed) {
        if (isFactor(typed, left)) {
            Fact sameLeft = new Fact(Operation.MULTIPLY, left, typed / left);
            if (Math.abs(typed / left - right) == 1 || !isFactor(typed, right)) {
                return Optional.of(sameLeft);
            }
            return Optional.of(
                    Math.abs(typed / right - left) == 1
                            ? new Fact(Operation.MULTIPLY, typed / right, right)
                            : sameLeft);
        }
        if (isFactor(typed, right)) {
            return Optional.of(new Fact(Operation.MULTIPLY, typed / right, right));
        }
        return Families.all().stream()
                .filter(f -> f.product() == typed)
                .findFirst()
                .map(f -> new Fact(Operation.MULTIPLY, f.low(), f.high()));
    }

    private static Optional<Fact> ofQuotient(int divisor, int typed) {
        return typed >= 1 && typed <= Families.LARGEST_FACTOR
                ? Optional.of(new Fact(Operation.DIVIDE, divisor * typed, divisor))
                : Optional.empty();
    }

    private static boolean isFactor(int product, int factor) {
        return product > 0 && product % factor == 0 && product / factor <= Families.LARGEST_FACTOR;
    }

    private static boolean isNeighbour(Question question, Fact fact) {
        if (question.operation() == Operation.DIVIDE) {
            return Math.abs(fact.result() - question.expected()) == 1;
        }
        boolean left = fact.left() == question.left() && Math.abs(fact.right() - question.right()) == 1;
        boolean right = fact.right() == question.right() && Math.abs(fact.left() - question.left()) == 1;
        return left || right;
    }

    private static boolean sharesANumber(Question question, Fact fact) {
        return question.operation() == Operation.DIVIDE
                || fact.left() == question.left()
                || fact.right() == question.right();
    }
}
