// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;

/**
 * What may not follow what, whatever is wished: no trace more than three times in a drill (four after an error, five while
 * few families are met), none before at least two others have come, no product twice in a row, no block of questions said
 * twice over, a fact missed twice not again before the next drill, and families that are easily mixed up kept apart while
 * one of them is shaky or was missed in this drill. The numbers are our own choice.
 *
 * <p>Neighbours are kept apart because a recent answer comes back as an error (Campbell and Tarling 1996, Memory and
 * Cognition 24, 156–172).
 */
final class Rails {
    /** A trace, or the inverse of a product, comes at least so many questions after. */
    static final int APART = 3;

    /** Where there are enough facts, a trace comes again after so many questions at the earliest. */
    static final int WELL_APART = 5;

    /** How often a trace is asked in a drill at most; once more if it was missed. */
    static final int MOST_TIMES = 3;

    /** The same in a drill before which fewer families were met than {@link #FEW}. */
    static final int MOST_TIMES_OF_FEW = 5;

    /** With fewer families there is not enough to ask between. */
    static final int FEW = 8;

    /** A fact missed so often in one drill rests until the next, if there are families enough to go on with. */
    static final int MOST_ERRORS = 2;

    private static final int ENOUGH_FAMILIES = 12;

    /** A product needs so many other families with a division left, for its inverse is to come {@link #APART} after it. */
    private static final int FAMILIES_FOR_AN_INVERSE = 4;

    /** So many turns of other divisions must be left for each inverse that is owed. */
    private static final int TURNS_FOR_AN_INVERSE = 4;

    private static final boolean[][] NEIGHBOURS = neighbours();

    private final ChoiceContext here;
    private final TurnHistory asked;
    private final boolean few;
    private final boolean[] rests = new boolean[Trace.COUNT];
    private final boolean[] missed = new boolean[Families.COUNT];
    private final int[] divisionTurns = new int[Families.COUNT];
    private int familiesWithDivisions;

    /** Worked out when a family is first looked at: most choices look at each several times. */
    private final byte[] allowed = new byte[Families.COUNT];

    Rails(ChoiceContext here) {
        this.here = here;
        this.asked = here.asked;
        this.few = here.familiesMetBefore() < FEW;
        for (int t = 0; t < Trace.COUNT; t++) {
            missed[ChoiceContext.familyOf(t)] |= asked.errors(t) > 0;
            // An inverse that is owed comes once more all the same.
            boolean owed =
                    !ChoiceContext.isProduct(t) && asked.owedSince(ChoiceContext.familyOf(t)) < TurnHistory.NEVER;
            rests[t] = here.familiesMet() >= ENOUGH_FAMILIES && asked.errors(t) >= MOST_ERRORS && !owed;
        }
        for (int f = 0; f < Families.COUNT; f++) {
            noteDivisions(f);
        }
    }

    private void noteDivisions(int f) {
        boolean all = true;
        for (int division : ChoiceContext.divisionsOf(f)) {
            all &= rests[division];
            divisionTurns[f] += mayEverCome(division) ? turnsLeft(division) : 0;
        }
        familiesWithDivisions += divisionTurns[f] > 0 ? 1 : 0;
        // A product brings its inverse along, so it rests when none of them may come.
        rests[f] |= all;
    }

    private boolean mayEverCome(int trace) {
        return here.isMet(trace) && !rests[trace] && !here.isHeld(ChoiceContext.familyOf(trace));
    }

    /** Whether the trace is left out for the rest of this drill: it was missed twice, and is not owed. */
    boolean rests(int trace) {
        return rests[trace];
    }

    /** How often the trace may still be asked in this drill. */
    int turnsLeft(int trace) {
        return Math.max(0, most(trace) - asked.times(trace));
    }

    private int most(int trace) {
        return few ? MOST_TIMES_OF_FEW : MOST_TIMES + (asked.errors(trace) > 0 ? 1 : 0);
    }

    /** Whether the inverse of the family's product could still follow it, at the distance it should have. */
    boolean hasRoomForAnInverse(int family) {
        return (divisionTurns[family] > 0 || !here.isFamilyMet(family)) && isEnoughToAskBetween(family);
    }

    private boolean isEnoughToAskBetween(int family) {
        int turns = 0;
        int owed = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            turns += f == family ? 0 : divisionTurns[f];
            owed += asked.owedSince(f) == TurnHistory.NEVER ? 0 : 1;
        }
        return familiesWithDivisions > (few ? 2 : FAMILIES_FOR_AN_INVERSE)
                && turns >= TURNS_FOR_AN_INVERSE * (1 + owed);
    }

    /** Whether the trace may come now. */
    boolean allows(int trace) {
        return asked.ago(trace) >= WELL_APART && allowsSoon(trace);
    }

    /** Whether it may come now though the same trace came {@link #APART} questions before, as after an error. */
    boolean allowsSoon(int trace) {
        return bears(trace) && allowsFamily(ChoiceContext.familyOf(trace));
    }

    /** Whether it may come when nothing else does: neighbours, and a trace again after only {@link #APART} questions. */
    boolean bears(int trace) {
        return turnsLeft(trace) > 0 && bearsOnceMore(trace);
    }

    /** The same, once more often than a trace should be asked. */
    boolean bearsOnceMore(int trace) {
        int family = ChoiceContext.familyOf(trace);
        return asked.times(trace) <= most(trace)
                && !rests[trace]
                && !here.isHeld(family)
                && asked.ago(trace) >= APART
                && asked.familyAgo(family) >= APART
                && !repeats(family)
                && !asked.repeatsBlock(trace);
    }

    /** Whether the last question had the same product. */
    boolean repeats(int family) {
        int last = asked.traceBefore(1);
        return last >= 0
                && Families.at(ChoiceContext.familyOf(last)).product()
                        == Families.at(family).product();
    }

    private boolean allowsFamily(int f) {
        if (allowed[f] == 0) {
            allowed[f] = (byte) (isFarFromNeighbours(f) ? 1 : -1);
        }
        return allowed[f] > 0;
    }

    private boolean isFarFromNeighbours(int f) {
        for (int ago = 1; ago <= APART; ago++) {
            int before = asked.traceBefore(ago);
            if (before >= 0) {
                int other = ChoiceContext.familyOf(before);
                if (NEIGHBOURS[other][f] && !(isSure(other) && isSure(f))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Accurate, and not missed in this drill either. */
    private boolean isSure(int family) {
        return here.isAccurate(family) && !missed[family];
    }

    /** Whether two families share a factor and their products lie within twice that factor of each other. */
    static boolean areNeighbours(Family a, Family b) {
        if (a.equals(b)) {
            return false;
        }
        int distance = Math.abs(a.product() - b.product());
        return (b.contains(a.low()) && distance <= 2 * a.low()) || (b.contains(a.high()) && distance <= 2 * a.high());
    }

    private static boolean[][] neighbours() {
        boolean[][] all = new boolean[Families.COUNT][Families.COUNT];
        for (Family a : Families.all()) {
            for (Family b : Families.all()) {
                all[a.index()][b.index()] = areNeighbours(a, b);
            }
        }
        return all;
    }
}
