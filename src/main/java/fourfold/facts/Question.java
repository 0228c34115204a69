// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/**
 * A fact with its result hidden. There are 200: 100 products and 100 quotients.
 *
 * @param operation multiply or divide
 * @param left the number before the sign
 * @param right the number after the sign, 1 to 10
 */
public record Question(Operation operation, int left, int right) implements Prompt {
    public Question {
        // A question is whole only if its fact is; the fact's own check says what is wrong.
        new Fact(operation, left, right);
    }

    /** The question a × b. */
    public static Question product(int a, int b) {
        return new Question(Operation.MULTIPLY, a, b);
    }

    /** The question p ÷ divisor of a family. */
    public static Question quotient(Family family, int divisor) {
        family.partnerOf(divisor);
        return new Question(Operation.DIVIDE, family.product(), divisor);
    }

    @Override
    public int expected() {
        return operation == Operation.MULTIPLY ? left * right : left / right;
    }

    /** The fact with nothing hidden. */
    public Fact fact() {
        return new Fact(operation, left, right);
    }

    /** The family the question belongs to. */
    public Family family() {
        return operation == Operation.MULTIPLY ? Family.of(left, right) : Family.of(right, left / right);
    }

    /** The trace of memory an answer to this question draws on. */
    public Trace trace() {
        return operation == Operation.MULTIPLY ? Trace.product(family()) : Trace.quotient(family(), right);
    }

    /** The index of {@link #trace()}, worked out without making one. */
    public int traceIndex() {
        if (operation == Operation.MULTIPLY) {
            int high = Math.max(left, right);
            return high * (high - 1) / 2 + Math.min(left, right) - 1;
        }
        return Families.COUNT + (right - 1) * Families.LARGEST_FACTOR + left / right - 1;
    }

    /** b × a for a × b; the other division of the family for a quotient; the question itself in a square. */
    public Question turnAround() {
        return operation == Operation.MULTIPLY
                ? new Question(operation, right, left)
                : new Question(operation, left, left / right);
    }

    /** With its printed sign and no result, as in {@code 56 ÷ 7}. */
    @Override
    public String toString() {
        return left + " " + operation.sign() + " " + right;
    }
}
