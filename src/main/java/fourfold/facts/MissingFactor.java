// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/**
 * A division asked as a product with a factor hidden: 7 × ? = 56 for 56 ÷ 7. It is another form of the same question and
 * draws on the same trace (a missing-factor problem; common practice in teaching division, no source).
 *
 * @param quotient the division that it asks
 */
public record MissingFactor(Question quotient) implements Prompt {
    public MissingFactor {
        if (quotient.operation() != Operation.DIVIDE) {
            throw new IllegalArgumentException("a factor is hidden for a division, not for " + quotient);
        }
    }

    /** The factor that is shown. */
    public int known() {
        return quotient.right();
    }

    /** The product that is shown. */
    public int product() {
        return quotient.left();
    }

    @Override
    public int expected() {
        return quotient.expected();
    }

    /** With the hidden factor as a question mark, as in {@code 7 × ? = 56}. */
    @Override
    public String toString() {
        return known() + " " + Operation.MULTIPLY.sign() + " ? = " + product();
    }
}
