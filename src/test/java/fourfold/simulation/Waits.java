// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.Answer;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * How long a child waits for a new family: drills without one since the last, counted only where the child had 90 % right
 * in the three drills before and some family is left; and, told apart, only where at least 80 % of the families met over
 * two weeks ago were fluent as well.
 */
final class Waits {
    private static final double RIGHT = 0.9;
    private static final double READY = 0.8;
    private static final int DRILLS = 3;
    private static final long SETTLED_DAYS = 14;
    private static final long NOT_MET = Long.MAX_VALUE;

    private final long[] metOn = new long[Families.COUNT];
    private final int[] asked = new int[DRILLS];
    private final int[] right = new int[DRILLS];
    private int drills;
    private int met;
    private int wait;
    private int waitReady;
    private int longest;
    private int longestReady;

    Waits() {
        Arrays.fill(metOn, NOT_MET);
    }

    /**
     * Takes a drill.
     *
     * @param day on which it was, from any start
     * @param answers all of the drill's
     * @param sequence the same drill, counted
     * @param fluent which families were fluent when it began
     */
    void take(long day, List<Answer> answers, DrillSequence sequence, IntPredicate fluent) {
        boolean able = met < Families.COUNT && drills >= DRILLS && rightLately();
        boolean ready = able && settledAreFluent(day, fluent);
        int before = met;
        for (Answer answer : answers) {
            answer.question().ifPresent(q -> meet(q.family(), day));
        }
        wait = met > before ? 0 : wait + (able ? 1 : 0);
        waitReady = met > before ? 0 : waitReady + (ready ? 1 : 0);
        longest = Math.max(longest, wait);
        longestReady = Math.max(longestReady, waitReady);
        asked[drills % DRILLS] = sequence.asked();
        right[drills % DRILLS] = sequence.right();
        drills++;
    }

    private void meet(Family family, long day) {
        if (metOn[family.index()] == NOT_MET) {
            metOn[family.index()] = day;
            met++;
        }
    }

    private boolean rightLately() {
        return Arrays.stream(right).sum() >= RIGHT * Arrays.stream(asked).sum();
    }

    private boolean settledAreFluent(long day, IntPredicate fluent) {
        int settled = 0;
        int good = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            if (metOn[f] != NOT_MET && day - metOn[f] > SETTLED_DAYS) {
                settled++;
                good += fluent.test(f) ? 1 : 0;
            }
        }
        return good >= READY * settled;
    }

    boolean isMet(Family family) {
        return metOn[family.index()] != NOT_MET;
    }

    int met() {
        return met;
    }

    int longest() {
        return longest;
    }

    int longestReady() {
        return longestReady;
    }
}
