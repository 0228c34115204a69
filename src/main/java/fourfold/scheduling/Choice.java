// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import java.time.Duration;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * One choice. Order of turns: a sure fact after two errors in a row and two to begin with, what was promised last time, a missed
 * fact whose time has come, an inverse that is owed, the facts of a family just met, what the parent wants practised, a
 * family that may be known or one more to be taught, what is due, what is weak once more, what would fade. When nothing
 * of this is left the drill may end; otherwise the least sure not asked yet comes, and then whatever the rails allow. After
 * a hard fact another hard one waits a little, while something easier is of use.
 */
final class Choice {
    private static final int SURE_FACTS = 2;
    private static final int FOCUS_TIMES = 3;
    private static final int ERRORS_TO_COMFORT = 2;

    private final Rules rules;
    private final ChoiceContext here;
    private final TurnHistory asked;
    private final Rails rails;
    private final PracticeValue practice;
    private final NewFamilies families;
    private final boolean gentle;
    private final Candidates candidates;
    private final MustCome must;

    Choice(Rules rules, ChoiceContext here) {
        this.rules = rules;
        this.here = here;
        this.asked = here.asked;
        this.rails = new Rails(here);
        this.practice = new PracticeValue(here, rails, rules);
        this.families = new NewFamilies(here, rails, rules);
        this.gentle = here.isTimeToBeGentle();
        this.candidates = new Candidates(here, rails, rules.pairs());
        this.must = new MustCome(here, rails, rules, practice, candidates);
    }

    Optional<Turn> turn() {
        if (here.practised.compareTo(here.drill.session().planned()) >= 0) {
            return ending();
        }
        return families.teach()
                .or(this::comfort)
                .or(this::sureFact)
                .or(must::promised)
                .or(() -> must.missedOwedOrNew(candidates::keepsHardApart))
                .or(this::focused)
                .or(families::wished)
                .or(() -> here.wasAway() ? Optional.empty() : families.climb(countWeak()))
                .or(() -> gentle ? Optional.empty() : families.join(waiting(), countWeak()))
                .or(() -> candidates.isAfterHard() ? easierFirst() : Optional.empty())
                .or(() -> must.missedOwedOrNew(t -> true))
                .or(() -> due(t -> true))
                .or(() -> gentle ? Optional.empty() : families.byRule())
                .or(() -> weak(t -> true))
                .or(() -> fading(t -> true))
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
                .or(() -> candidates.turn(candidates::canAsk, asked::ago))
                .or(() -> candidates.turn(candidates::canBear, asked::ago))
                .or(families::nextAtLast)
                .or(families::byRule)
                .or(this::ending);
    }

    private Optional<Turn> comfort() {
        if (asked.errorsInARow() < ERRORS_TO_COMFORT) {
            return Optional.empty();
        }
        int sure = Candidates.best(candidates::canAsk, here::chanceRight);
        return sure >= 0 && here.chanceRight(sure) < Ending.SURE
                ? candidates.turn(candidates::canBear, here::chanceRight)
                : candidates.turn(sure);
    }

    private Optional<Turn> sureFact() {
        if (asked.turns() >= SURE_FACTS) {
            return Optional.empty();
        }
        return candidates.turn(
                t -> asked.times(t) == 0 && here.isAccurate(ChoiceContext.familyOf(t)) && candidates.canAsk(t),
                t -> here.memory.chanceQuick(t, here.now));
    }

    private Optional<Turn> focused() {
        return candidates.turn(t -> isFocused(t) && candidates.canAsk(t), practice::value);
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

    private Optional<Turn> due(IntPredicate now) {
        return candidates.turn(
                t -> mayBeDue(t) && practice.isDue(t) && now.test(t) && candidates.canAsk(t), this::value);
    }

    /** What was asked and would still be weak at the next drill is asked again, minutes later. */
    private Optional<Turn> weak(IntPredicate now) {
        return gentle
                ? Optional.empty()
                : candidates.turn(
                        t -> isWeak(t) && asked.ago(t) > rules.weakApart() && now.test(t) && candidates.canAsk(t),
                        this::value);
    }

    /** What is firm enough for the next drill and would fade in the weeks after. */
    private Optional<Turn> fading(IntPredicate now) {
        return gentle
                ? Optional.empty()
                : candidates.turn(
                        t -> mayBeDue(t) && practice.isFading(t) && now.test(t) && candidates.canAsk(t), this::value);
    }

    /** After a hard fact something useful that is not hard. */
    private Optional<Turn> easierFirst() {
        return due(candidates::keepsHardApart)
                .or(() -> fading(candidates::keepsHardApart))
                .or(() -> weak(candidates::keepsHardApart));
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
        return candidates.turn(
                t -> asked.times(t) == 0 && candidates.canAsk(t),
                t -> gentle ? practice.sureness(t) : -practice.sureness(t));
    }
}
