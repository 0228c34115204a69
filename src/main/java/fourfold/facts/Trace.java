// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

import java.util.List;

/**
 * What memory holds: one trace for the product of a family (a × b and b × a together), and one for each of its
 * divisions. 155 in all. That the two orders of a product share one trace while each division has its own is the
 * identical elements model (Rickard 2005, Journal of Experimental Psychology: General 134, 250–272).
 *
 * @param operation multiply or divide
 * @param family the family
 * @param divisor the number divided by; 0 for the product
 */
public record Trace(Operation operation, Family family, int divisor) {
    /** How many traces there are: a product for each family, and a quotient for each divisor and each result. */
    public static final int COUNT = Families.COUNT + Families.LARGEST_FACTOR * Families.LARGEST_FACTOR;

    public Trace {
        if (operation == Operation.MULTIPLY ? divisor != 0 : !family.contains(divisor)) {
            throw new IllegalArgumentException("no trace of the family " + family + " with the divisor " + divisor);
        }
    }

    /** The trace of a × b and b × a. */
    public static Trace product(Family family) {
        return new Trace(Operation.MULTIPLY, family, 0);
    }

    /** The trace of p ÷ divisor. */
    public static Trace quotient(Family family, int divisor) {
        return new Trace(Operation.DIVIDE, family, divisor);
    }

    /** Place among all traces, 0 to 154: products first, then for each table n its ten quotients by n. */
    public int index() {
        return operation == Operation.MULTIPLY
                ? family.index()
                : Families.COUNT + (divisor - 1) * Families.LARGEST_FACTOR + family.partnerOf(divisor) - 1;
    }

    /** The questions that draw on this trace: one, or both orders of a product. */
    public List<Question> questions() {
        if (operation == Operation.DIVIDE) {
            return List.of(Question.quotient(family, divisor));
        }
        Question question = Question.product(family.low(), family.high());
        return family.isSquare() ? List.of(question) : List.of(question, question.turnAround());
    }
}
