// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/**
 * A number shown on the screen to be typed as it is; it shows how fast the child's hands are.
 *
 * @param number 1 to 100
 */
public record NumberToCopy(int number) implements Prompt {
    public NumberToCopy {
        if (number < 1 || number > Families.LARGEST_PRODUCT) {
            throw new IllegalArgumentException(
                    "a number to copy is from 1 to " + Families.LARGEST_PRODUCT + ", not " + number);
        }
    }

    @Override
    public int expected() {
        return number;
    }

    @Override
    public String toString() {
        return Integer.toString(number);
    }
}
