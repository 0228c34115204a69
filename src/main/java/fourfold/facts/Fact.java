// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/**
 * One complete equation: 7 × 8 = 56 or 56 ÷ 7 = 8.
 *
 * @param operation multiply or divide
 * @param left the number before the sign
 * @param right the number after the sign, 1 to 10
 */
public record Fact(Operation operation, int left, int right) {
    public Fact {
        boolean known = right >= 1
                && right <= Families.LARGEST_FACTOR
                && (operation == Operation.MULTIPLY
                        ? left >= 1 && left <= Families.LARGEST_FACTOR
                        : left % right == 0 && left / right >= 1 && left / right <= Families.LARGEST_FACTOR);
        if (!known) {
            throw new IllegalArgumentException("no fact up to " + Families.LARGEST_FACTOR + "x"
                    + Families.LARGEST_FACTOR + ": " + left + " " + operation.plainSign() + " " + right);
        }
    }

    /** What the equation comes to. */
    public int result() {
        return operation == Operation.MULTIPLY ? left * right : left / right;
    }

    /** The family the fact belongs to. */
    public Family family() {
        return operation == Operation.MULTIPLY ? Family.of(left, right) : Family.of(right, left / right);
    }

    /** The question that hides this fact's result. */
    public Question question() {
        return new Question(operation, left, right);
    }

    /** The whole equation with its printed sign, as in {@code 7 × 8 = 56}. */
    @Override
    public String toString() {
        return left + " " + operation.sign() + " " + right + " = " + result();
    }
}
