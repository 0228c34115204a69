// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.progress.DrillSoFar;
import java.util.Arrays;

/**
 * What was asked from memory in the drill so far, seen from its end: how long ago each family and trace had its turn,
 * which products still owe their inverse, which traces were missed. Traces and families are named by their index.
 */
final class TurnHistory {
    /** Longer ago than any drill. */
    static final int NEVER = Integer.MAX_VALUE / 2;

    /** Blocks of questions that must not be said twice over have so many, at most. */
    private static final int LONGEST_BLOCK = 30;

    /** Newest first. */
    private final int[] sequence;

    private final int[] traceAgo = filled(Trace.COUNT);
    private final int[] familyAgo = filled(Families.COUNT);
    private final int[] owedSince = filled(Families.COUNT);
    private final int[] inViewAgo = filled(Families.COUNT);
    private final int[] timesAsked = new int[Trace.COUNT];
    private final int[] errors = new int[Trace.COUNT];
    private final boolean[] lastRight = new boolean[Trace.COUNT];
    private int right;
    private int errorsInARow;

    TurnHistory(DrillSoFar drill) {
        sequence = new int[drill.turns()];
        boolean[] inverseSeen = new boolean[Families.COUNT];
        int ago = 0;
        for (int place = drill.size() - 1; place >= 0; place--) {
            int trace = drill.traceAt(place);
            if (trace < 0) {
                continue;
            }
            int family = ChoiceContext.familyOf(trace);
            if (drill.wasInViewAt(place)) {
                inViewAgo[family] = Math.min(inViewAgo[family], ago);
                continue;
            }
            sequence[ago++] = trace;
            boolean correct = drill.wasRightAt(place);
            right += correct ? 1 : 0;
            errorsInARow += !correct && errorsInARow == ago - 1 ? 1 : 0;
            if (traceAgo[trace] == NEVER) {
                traceAgo[trace] = ago;
                lastRight[trace] = correct;
            }
            familyAgo[family] = Math.min(familyAgo[family], ago);
            timesAsked[trace]++;
            errors[trace] += correct ? 0 : 1;
            if (!ChoiceContext.isProduct(trace)) {
                inverseSeen[family] = true;
            } else if (!inverseSeen[family]) {
                // The latest product without a division after it: its inverse is owed since then.
                owedSince[family] = Math.min(owedSince[family], ago);
            }
        }
    }

    /** How many questions were asked from memory. */
    int turns() {
        return sequence.length;
    }

    /** How many questions from memory were answered rightly. */
    int right() {
        return right;
    }

    /** How many of the newest questions were missed, one after the other. */
    int errorsInARow() {
        return errorsInARow;
    }

    /** The trace asked so many turns ago, 1 for the last; −1 if the drill had not begun then. */
    int traceBefore(int ago) {
        return ago <= sequence.length ? sequence[ago - 1] : -1;
    }

    /** Whether the last block of questions, of two or more, would be said twice over if this trace came now. */
    boolean repeatsBlock(int trace) {
        for (int block = 2; block <= LONGEST_BLOCK && 2 * block - 1 <= sequence.length; block++) {
            if (sequence[block - 1] == trace && endsTwice(block)) {
                return true;
            }
        }
        return false;
    }

    private boolean endsTwice(int block) {
        for (int i = 0; i < block - 1; i++) {
            if (sequence[i] != sequence[i + block]) {
                return false;
            }
        }
        return true;
    }

    /** How often the trace was asked. */
    int times(int trace) {
        return timesAsked[trace];
    }

    /** Turns since the trace was asked: 1 if it was the last; {@link #NEVER} if it was not asked. */
    int ago(int trace) {
        return traceAgo[trace];
    }

    /** Turns since any fact of the family was asked. */
    int familyAgo(int family) {
        return familyAgo[family];
    }

    /** Turns since the family's facts were last typed with the answer in view. */
    int sinceInView(int family) {
        return inViewAgo[family];
    }

    /** How often the trace was missed. */
    int errors(int trace) {
        return errors[trace];
    }

    /** Whether the last answer to the trace was right. */
    boolean lastRight(int trace) {
        return lastRight[trace];
    }

    /** Whether a product of this drill still waits for its inverse. */
    boolean isAnyOwed() {
        for (int since : owedSince) {
            if (since < NEVER) {
                return true;
            }
        }
        return false;
    }

    /** Turns since the family's last product that no division has followed; {@link #NEVER} if nothing is owed. */
    int owedSince(int family) {
        return owedSince[family];
    }

    /** The family owes no inverse after all. */
    void forgive(int family) {
        owedSince[family] = NEVER;
    }

    private static int[] filled(int length) {
        int[] array = new int[length];
        Arrays.fill(array, NEVER);
        return array;
    }
}
