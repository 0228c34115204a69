// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Trace;
import java.time.Duration;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;

/** Which traces may come now, and the best of them by some number. Traces are named by their index. */
final class Candidates {
    /** Below this chance a fact is hard: two of them are kept apart. Our own choice. */
    private static final double HARD = 0.8;

    /** A right answer itself lifts the forecast so far; what is lower afterwards was hard before. Our own choice. */
    private static final double HARD_AFTERWARDS = 0.97;

    /** So near the end of a drill no product comes any more: its inverse could not follow. Our own choice. */
    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);

    private final ChoiceContext here;
    private final Rails rails;
    private final boolean pairs;
    private final boolean productsMayCome;
    private final boolean afterHard;

    Candidates(ChoiceContext here, Rails rails, boolean pairs) {
        this.here = here;
        this.rails = rails;
        this.pairs = pairs;
        this.productsMayCome = here.left.compareTo(NO_MORE_PRODUCTS) > 0;
        int last = here.asked.traceBefore(1);
        this.afterHard = last >= 0 && (!here.asked.lastRight(last) || here.chanceRight(last) < HARD_AFTERWARDS);
    }

    /** Whether the last question was hard or was missed. */
    boolean isAfterHard() {
        return afterHard;
    }

    /** Whether two hard ones in a row are avoided: the last one was not hard, or this one is not. */
    boolean keepsHardApart(int t) {
        return !afterHard || here.chanceRight(t) >= HARD;
    }

    /** Whether it may come, at all the distances there should be. */
    boolean canAsk(int t) {
        return rails.allows(t) && mayFollow(t);
    }

    /** Whether it may come where nothing else does, a neighbour or sooner than it should. */
    boolean canBear(int t) {
        return rails.bears(t) && mayFollow(t);
    }

    /** Whether its family was met and, if it is a product, its inverse can still follow. */
    boolean mayFollow(int t) {
        int family = ChoiceContext.familyOf(t);
        return here.isFamilyMet(family)
                && (!ChoiceContext.isProduct(t) || !pairs || (productsMayCome && rails.hasRoomForAnInverse(family)));
    }

    /** The turn that asks the one with the greatest number. */
    Optional<Turn> turn(IntPredicate may, IntToDoubleFunction by) {
        return turn(best(may, by));
    }

    /** The turn that asks a trace; none for −1. */
    Optional<Turn> turn(int t) {
        return t < 0 ? Optional.empty() : Optional.of(here.ask(t));
    }

    /** Of those that pass the test the one with the greatest number; −1 if there is none. */
    static int best(IntPredicate may, IntToDoubleFunction by) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int t = 0; t < Trace.COUNT; t++) {
            if (may.test(t)) {
                double number = by.applyAsDouble(t);
                if (number > most) {
                    most = number;
                    best = t;
                }
            }
        }
        return best;
    }
}
