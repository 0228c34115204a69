// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

/** What undoes what: the yardstick of the laws on pairs. */
public final class Inverse {
    private Inverse() {}

    /** Whether one question undoes the other: p ÷ a and p ÷ b undo a × b and b × a. */
    public static boolean isOf(Question one, Question other) {
        return one.operation() != other.operation() && one.family().equals(other.family());
    }
}
