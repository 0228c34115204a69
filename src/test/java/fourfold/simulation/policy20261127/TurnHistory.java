// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What was asked from memory in the drill so far, seen from its end: how long ago each family and trace had its turn,
 * which products still owe their inverse, which traces were missed and are to be asked again.
 */
final class TurnHistory {
    /** Longer ago than any drill. */
    static final int NEVER = Integer.MAX_VALUE / 2;

    /** How many of the last questions rails look at. */
    private static final int LOOKED_BACK = 3;

    private final int[] traceAgo = filled(Trace.COUNT);
    private final int[] familyAgo = filled(Families.COUNT);
    private final int[] owedSince = filled(Families.COUNT);
    private final int[] timesAsked = new int[Trace.COUNT];
    private final int[] errors = new int[Trace.COUNT];
    private final boolean[] lastRight = new boolean[Trace.COUNT];
    private final int[] introducedAgo = filled(Families.COUNT);
    private final List<Question> recent = new ArrayList<>(LOOKED_BACK);
    private final List<Family> recentFamilies = new ArrayList<>(LOOKED_BACK);
    private final int turns;
    private int right;

    TurnHistory(DrillSoFar drill) {
        turns = drill.turns();
        boolean[] inverseSeen = new boolean[Families.COUNT];
        int ago = 0;
        for (int place = drill.size() - 1; place >= 0; place--) {
            int trace = drill.traceAt(place);
            if (trace < 0) {
                continue;
            }
            int family = ChoiceContext.familyOf(trace);
            if (drill.wasInViewAt(place)) {
                noteInView(family, ago);
                continue;
            }
            ago++;
            boolean correct = drill.wasRightAt(place);
            right += correct ? 1 : 0;
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
        noteRecent(drill);
    }

    private void noteRecent(DrillSoFar drill) {
        for (Answer answer : drill.newestFirst()) {
            Optional<Question> asked = answer.question();
            if (recent.size() == LOOKED_BACK) {
                return;
            }
            if (asked.isPresent() && answer.purpose() != Purpose.INTRODUCE) {
                recent.add(asked.get());
                recentFamilies.add(
                        Families.at(ChoiceContext.familyOf(asked.get().traceIndex())));
            }
        }
    }

    private void noteInView(int family, int ago) {
        introducedAgo[family] = Math.min(introducedAgo[family], ago);
    }

    /** How many questions were asked from memory. */
    int turns() {
        return turns;
    }

    /** Turns since the trace was asked: 1 if it was the last; {@link #NEVER} if it was not asked. */
    int ago(Trace trace) {
        return traceAgo[trace.index()];
    }

    /** Turns since any fact of the family was asked. */
    int ago(Family family) {
        return familyAgo[family.index()];
    }

    /** Turns since the family's facts were last typed with the answer in view. */
    int sinceInView(Family family) {
        return introducedAgo[family.index()];
    }

    /** How often the trace was asked in this drill. */
    int times(Trace trace) {
        return timesAsked[trace.index()];
    }

    /** How often the trace was missed in this drill. */
    int errors(Trace trace) {
        return errors[trace.index()];
    }

    /** Whether the trace's last answer in this drill was right. */
    boolean lastRight(Trace trace) {
        return lastRight[trace.index()];
    }

    /** Turns since the family's last product that no division has followed; {@link #NEVER} if nothing is owed. */
    int owedSince(Family family) {
        return owedSince[family.index()];
    }

    /** The family owes no inverse after all. */
    void forgive(int family) {
        owedSince[family] = NEVER;
    }

    /** The last three questions asked from memory, newest first. */
    List<Question> recent() {
        return recent;
    }

    /** The family of the {@code i}-th of the last three questions, newest first. */
    Family recentFamily(int i) {
        return recentFamilies.get(i);
    }

    /** How many questions from memory were answered rightly. */
    int right() {
        return right;
    }

    /** How often the trace with that index was asked. */
    int times(int trace) {
        return timesAsked[trace];
    }

    /** Turns since the trace with that index was asked. */
    int ago(int trace) {
        return traceAgo[trace];
    }

    /** How often the trace with that index was missed. */
    int errors(int trace) {
        return errors[trace];
    }

    /** Whether the last answer to the trace with that index was right. */
    boolean lastRight(int trace) {
        return lastRight[trace];
    }

    /** As {@link #owedSince(Family)}, by the family's index. */
    int owedSince(int family) {
        return owedSince[family];
    }

    private static int[] filled(int length) {
        int[] array = new int[length];
        Arrays.fill(array, NEVER);
        return array;
    }
}
