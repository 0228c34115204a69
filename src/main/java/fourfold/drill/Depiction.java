// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.FactMastery;
import fourfold.progress.Progress;

/**
 * How a fact is shown as a picture. A family is met in several, since each says another thing about it: rows of things,
 * steps along the numbers, a whole and its parts.
 */
public enum Depiction {
    /** Dots in rows. */
    ARRAY,
    /** Jumps on a number line: forwards for a product, backwards for a quotient. */
    JUMPS,
    /** A bar split into equal parts. */
    BAR;

    /**
     * The picture that a family's turn has come for. Each picture a child has seen of a family, when it was introduced
     * and after each error, moves it on by one, so the next is never the same; families begin at different ones.
     *
     * @param progress what the child has reached before the picture is shown
     */
    public static Depiction of(Progress progress, Family family) {
        return of(family, seen(progress, family));
    }

    /** The picture of a family of which {@code seen} were seen. */
    static Depiction of(Family family, int seen) {
        return values()[Math.floorMod(family.index() + seen, values().length)];
    }

    /** How many rows, jumps or parts the picture of a question's fact has: 1 to 10. */
    public int groups(Question question) {
        if (question.operation() == Operation.MULTIPLY) {
            return question.left();
        }
        // Jumps are as long as the divisor; rows and parts are as many as the divisor.
        return this == JUMPS ? question.expected() : question.right();
    }

    private static int seen(Progress progress, Family family) {
        int missed = 0;
        boolean taught = true;
        for (Trace trace : family.traces()) {
            FactMastery mastery = progress.mastery(trace);
            missed += mastery.asked() - mastery.right();
            taught &= mastery.isMet();
        }
        return missed + (taught ? 1 : 0);
    }
}
