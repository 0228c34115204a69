// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * What must come in this drill though something else may gain more: what was promised, what was missed, inverses that are
 * owed, the facts of a family just met. What is hard may wait a little for something easier to stand before it.
 */
final class MustCome {
    /** So much later than it should a missed fact comes back though a neighbour was just asked. */
    private static final int LATE = 2;

    /** What was promised comes within so many turns, the inverses between them counted. Our own choice. */
    private static final int PROMISED_WITHIN = 20;

    /** From so many turns on it comes though a neighbour was just asked. */
    private static final int PROMISED_AT_LAST = 6;

    /** What must come and is hard waits for something easier so many times its usual distance. Our own choice. */
    private static final int LONGEST_WAIT = 2;

    private final ChoiceContext here;
    private final TurnHistory asked;
    private final Rails rails;
    private final Rules rules;
    private final PracticeValue practice;
    private final Candidates candidates;

    MustCome(ChoiceContext here, Rails rails, Rules rules, PracticeValue practice, Candidates candidates) {
        this.here = here;
        this.asked = here.asked;
        this.rails = rails;
        this.rules = rules;
        this.practice = practice;
        this.candidates = candidates;
    }

    /** What must come in this drill: as far as it passes the test, or has waited long enough. */
    Optional<Turn> missedOwedOrNew(IntPredicate now) {
        return again(now).or(() -> owed(now)).or(() -> justMet(now));
    }

    private static boolean hasWaited(int turns) {
        return turns > LONGEST_WAIT * Rails.APART && turns < TurnHistory.NEVER;
    }

    private Optional<Turn> again(IntPredicate now) {
        int gap = here.memory.chanceRightAgain() >= rules.usuallyRight() ? rules.againAfter() : rules.againSoon();
        return candidates.turn(
                t -> asked.errors(t) > 0
                        && !asked.lastRight(t)
                        && asked.ago(t) > gap
                        && (rails.allowsSoon(t) || (asked.ago(t) > gap + LATE && rails.bears(t)))
                        && candidates.mayFollow(t)
                        && (asked.ago(t) > LONGEST_WAIT * gap || now.test(t)),
                asked::ago);
    }

    private Optional<Turn> owed(IntPredicate now) {
        int family = -1;
        for (int f = 0; rules.pairs() && f < Families.COUNT; f++) {
            int since = asked.owedSince(f);
            if (since < TurnHistory.NEVER
                    && since > Rails.APART
                    && !here.isHeld(f)
                    && rails.bears(practice.division(f))
                    && (hasWaited(since) || now.test(practice.division(f)))
                    && (family < 0 || since > asked.owedSince(family))) {
                family = f;
            }
        }
        return family < 0 ? Optional.empty() : candidates.turn(practice.division(family));
    }

    /**
     * The facts of a family met in this drill that have not been asked from memory yet. Among a handful of families all are
     * neighbours, and what was just taught would never come.
     */
    private Optional<Turn> justMet(IntPredicate now) {
        IntPredicate may = here.familiesMet() < NewFamilies.HANDFUL ? candidates::canBear : candidates::canAsk;
        return candidates.turn(
                t -> here.progress.mastery(t).asked() == 0
                        && asked.sinceInView(ChoiceContext.familyOf(t)) >= Rails.APART
                        && may.test(t)
                        && (hasWaited(asked.sinceInView(ChoiceContext.familyOf(t))) || now.test(t)),
                t -> -t);
    }

    /** A family missed in the last drill: the child was told that it comes again. */
    Optional<Turn> promised() {
        if (asked.turns() >= PROMISED_WITHIN) {
            return Optional.empty();
        }
        IntPredicate may = asked.turns() < PROMISED_AT_LAST ? candidates::canAsk : candidates::canBear;
        for (Family family :
                here.progress.recent().promised(here.drill.session().id())) {
            int f = family.index();
            int best = Candidates.best(
                    t -> ChoiceContext.familyOf(t) == f
                            && asked.familyAgo(f) == TurnHistory.NEVER
                            && (asked.turns() >= 2 * PROMISED_AT_LAST || candidates.keepsHardApart(t))
                            && may.test(t),
                    t -> -practice.sureness(t));
            if (best >= 0) {
                return candidates.turn(best);
            }
        }
        return Optional.empty();
    }
}
