// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import java.time.Duration;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;

/**
 * One choice. Order of turns: a sure fact after two errors in a row and two to begin with, what was promised last time, a missed
 * fact whose time has come, an inverse that is owed, the facts of a family just met, what the parent wants practised, a
 * family that may be known or one more to be taught, what is due, what is weak once more. When nothing of this is left the drill may end; otherwise the
 * least sure not asked yet comes, and then whatever the rails allow.
 */
final class Choice {
    private static final int SURE_FACTS = 2;
    private static final int FOCUS_TIMES = 3;
    private static final int ERRORS_TO_COMFORT = 2;

    /** So much later than it should a missed fact comes back though a neighbour was just asked. */
    private static final int LATE = 2;

    /** What was promised comes within so many turns, the inverses between them counted. Our own choice. */
    private static final int PROMISED_WITHIN = 20;

    /** From so many turns on it comes though a neighbour was just asked. */
    private static final int PROMISED_AT_LAST = 6;

    /** Below this chance a fact is hard: two of them are kept apart. Our own choice. */
    private static final double HARD = 0.8;

    private static final Duration NO_MORE_PRODUCTS = Duration.ofSeconds(20);

    private final Rules rules;
    private final ChoiceContext here;
    private final TurnHistory asked;
    private final Rails rails;
    private final PracticeValue practice;
    private final NewFamilies families;
    private final boolean productsMayCome;
    private final boolean gentle;

    Choice(Rules rules, ChoiceContext here) {
        this.rules = rules;
        this.here = here;
        this.asked = here.asked;
        this.rails = new Rails(here);
        this.practice = new PracticeValue(here, rails, rules);
        this.families = new NewFamilies(here, rails, rules);
        this.gentle = here.isTimeToBeGentle();
        this.productsMayCome = here.left.compareTo(NO_MORE_PRODUCTS) > 0;
    }

    Optional<Turn> turn() {
        if (here.practised.compareTo(here.drill.session().planned()) >= 0) {
            return ending();
        }
        return families.teach()
                .or(this::comfort)
                .or(this::sureFact)
                .or(this::promised)
                .or(this::again)
                .or(this::owed)
                .or(this::justMet)
                .or(this::focused)
                .or(families::wished)
                .or(() -> here.wasAway() ? Optional.empty() : families.climb(countWeak()))
                .or(() -> gentle ? Optional.empty() : families.join(waiting(), countWeak()))
                .or(this::due)
                .or(() -> gentle ? Optional.empty() : families.byRule())
                .or(this::weak)
                .or(this::fading)
                .or(() -> mayEnd() ? ending() : filling());
    }

    private Optional<Turn> ending() {
        return new Ending(here, rails, practice).turn(rules.pairs());
    }

    /** Nothing useful is left: not before some minutes while a family is not fluent, and not if the parent wants it all. */
    private boolean mayEnd() {
        Duration least = here.isAnyNotFluent() ? rules.shortest() : rules.least();
        return here.progress.steering().settings().endsEarly()
                && !families.hasJustTaught()
                && here.practised.compareTo(least) >= 0;
    }

    private Optional<Turn> filling() {
        return leastSure()
                .or(() -> turnFor(best(this::canAsk, asked::ago)))
                .or(() -> turnFor(best(this::canBear, asked::ago)))
                .or(families::nextAtLast)
                .or(families::byRule)
                .or(this::ending);
    }

    private Optional<Turn> comfort() {
        if (asked.errorsInARow() < ERRORS_TO_COMFORT) {
            return Optional.empty();
        }
        int sure = best(this::canAsk, here::chanceRight);
        return sure >= 0 && here.chanceRight(sure) < Ending.SURE
                ? turnFor(best(this::canBear, here::chanceRight))
                : turnFor(sure);
    }

    private Optional<Turn> sureFact() {
        if (asked.turns() >= SURE_FACTS) {
            return Optional.empty();
        }
        return turnFor(best(
                t -> asked.times(t) == 0 && here.isAccurate(ChoiceContext.familyOf(t)) && canAsk(t),
                t -> here.memory.chanceQuick(t, here.now)));
    }

    private Optional<Turn> again() {
        int gap = here.memory.chanceRightAgain() >= rules.usuallyRight() ? rules.againAfter() : rules.againSoon();
        return turnFor(best(
                t -> asked.errors(t) > 0
                        && !asked.lastRight(t)
                        && asked.ago(t) > gap
                        && (rails.allowsSoon(t) || (asked.ago(t) > gap + LATE && rails.bears(t)))
                        && mayFollow(t),
                asked::ago));
    }

    private Optional<Turn> owed() {
        int family = -1;
        for (int f = 0; rules.pairs() && f < Families.COUNT; f++) {
            int since = asked.owedSince(f);
            if (since < TurnHistory.NEVER
                    && since > Rails.APART
                    && !here.isHeld(f)
                    && rails.bears(practice.division(f))
                    && (family < 0 || since > asked.owedSince(family))) {
                family = f;
            }
        }
        return family < 0 ? Optional.empty() : turnFor(practice.division(family));
    }

    /**
     * The facts of a family met in this drill that have not been asked from memory yet. Among a handful of families all are
     * neighbours, and what was just taught would never come.
     */
    private Optional<Turn> justMet() {
        IntPredicate may = here.familiesMet() < NewFamilies.HANDFUL ? this::canBear : this::canAsk;
        return turnFor(best(
                t -> here.progress.mastery(t).asked() == 0
                        && asked.sinceInView(ChoiceContext.familyOf(t)) >= Rails.APART
                        && may.test(t),
                t -> -t));
    }

    /** A family missed in the last drill: the child was told that it comes again. */
    private Optional<Turn> promised() {
        if (asked.turns() >= PROMISED_WITHIN) {
            return Optional.empty();
        }
        IntPredicate may = asked.turns() < PROMISED_AT_LAST ? this::canAsk : this::canBear;
        for (Family family :
                here.progress.recent().promised(here.drill.session().id())) {
            int f = family.index();
            int best = best(
                    t -> ChoiceContext.familyOf(t) == f && asked.familyAgo(f) == TurnHistory.NEVER && may.test(t),
                    t -> -practice.sureness(t));
            if (best >= 0) {
                return turnFor(best);
            }
        }
        return Optional.empty();
    }

    private Optional<Turn> focused() {
        return turnFor(best(t -> isFocused(t) && canAsk(t), practice::value));
    }

    private int waiting() {
        int count = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            count += mayBeDue(t) && practice.isDue(t) ? 1 : 0;
        }
        return count;
    }

    private boolean mayBeDue(int t) {
        return here.isMet(t) && !rails.rests(t) && !here.isHeld(ChoiceContext.familyOf(t));
    }

    private boolean isWeak(int t) {
        return here.isMet(t) && !here.isHeld(ChoiceContext.familyOf(t)) && practice.isWeak(t);
    }

    private int countWeak() {
        int count = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            count += isWeak(t) ? 1 : 0;
        }
        return count;
    }

    private Optional<Turn> due() {
        return turnFor(apart(t -> mayBeDue(t) && practice.isDue(t) && canAsk(t)));
    }

    /** What was asked and would still be weak at the next drill is asked again. */
    private Optional<Turn> weak() {
        if (gentle) {
            return Optional.empty();
        }
        return turnFor(apart(t -> isWeak(t) && asked.ago(t) > rules.weakApart() && canAsk(t)));
    }

    /** What is firm enough for the next drill and would fade in the weeks after. */
    private Optional<Turn> fading() {
        return gentle ? Optional.empty() : turnFor(apart(t -> mayBeDue(t) && practice.isFading(t) && canAsk(t)));
    }

    /** The one with the greatest value; after a hard one a hard one only if there is nothing else. */
    private int apart(IntPredicate may) {
        int last = asked.traceBefore(1);
        boolean hard = last >= 0 && (!asked.lastRight(last) || here.chanceRight(last) < HARD);
        int easier = hard ? best(t -> may.test(t) && here.chanceRight(t) >= HARD, this::value) : -1;
        return easier >= 0 ? easier : best(may, this::value);
    }

    /** What gains most, or what is easy. */
    private double value(int t) {
        return gentle ? here.memory.activation(t, here.now) : practice.value(t);
    }

    /** Whether the parent wants the trace practised, and it was not asked often enough in this drill yet. */
    private boolean isFocused(int t) {
        if (here.progress.steering().focused().isEmpty() || asked.times(t) >= FOCUS_TIMES) {
            return false;
        }
        return here.isMet(t) && here.progress.isFocused(Families.at(ChoiceContext.familyOf(t)));
    }

    private Optional<Turn> leastSure() {
        return turnFor(best(
                t -> asked.times(t) == 0 && canAsk(t), t -> gentle ? practice.sureness(t) : -practice.sureness(t)));
    }

    /** Of the traces that were met and may come, the one with the greatest number. */
    private int best(IntPredicate may, IntToDoubleFunction by) {
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

    private boolean canAsk(int t) {
        return rails.allows(t) && mayFollow(t);
    }

    private boolean canBear(int t) {
        return rails.bears(t) && mayFollow(t);
    }

    /** Whether its family was met and, if it is a product, its inverse can still follow. */
    private boolean mayFollow(int t) {
        int family = ChoiceContext.familyOf(t);
        return here.isFamilyMet(family)
                && (!ChoiceContext.isProduct(t)
                        || !rules.pairs()
                        || (productsMayCome && rails.hasRoomForAnInverse(family)));
    }

    private Optional<Turn> turnFor(int t) {
        return t < 0 ? Optional.empty() : Optional.of(here.ask(t));
    }
}
