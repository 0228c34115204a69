// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import java.time.Duration;
import java.util.Optional;
import java.util.function.IntPredicate;

/** The end of a drill: what is owed, with sure divisions between to keep it apart, and a sure fact as the last of all. */
final class Ending {
    private static final Duration LONGEST = Duration.ofSeconds(150);

    /** Forecasts from here on count as sure; the last question should be one of them. Our own choice. */
    static final double SURE = 0.95;

    /** A right answer itself lifts the forecast so far; what is higher afterwards was sure before. Our own choice. */
    private static final double SURE_AFTERWARDS = 0.96;

    /** After so many errors in a row one more sure fact is no comfort. */
    private static final int MOST_ERRORS = 4;

    private final ChoiceContext here;
    private final Rails rails;
    private final PracticeValue value;

    Ending(ChoiceContext here, Rails rails, PracticeValue value) {
        this.here = here;
        this.rails = rails;
        this.value = value;
    }

    /** The next turn; empty when nothing is owed any more and the last fact was sure, or the ending has lasted too long. */
    Optional<Turn> turn(boolean pairs) {
        Duration longest = here.drill.session().planned().plus(LONGEST);
        if (here.practised.compareTo(longest) >= 0) {
            return Optional.empty();
        }
        int ready = -1;
        boolean owing = false;
        for (int f = 0; pairs && f < Families.COUNT; f++) {
            int since = here.asked.owedSince(f);
            int division = value.division(f);
            boolean mayCome = !rails.rests(division) && rails.turnsLeft(division) > 0 && !here.isHeld(f);
            if (since == TurnHistory.NEVER || !mayCome) {
                continue;
            }
            owing = true;
            if (since >= Rails.APART && rails.bears(division) && (ready < 0 || since > here.asked.owedSince(ready))) {
                ready = f;
            }
        }
        if (ready >= 0) {
            return Optional.of(here.ask(value.division(ready)));
        }
        return owing ? between() : lastOfAll();
    }

    /** One more fact unless the last was sure; where none is sure enough, the surest, if the last was missed. */
    private Optional<Turn> lastOfAll() {
        int last = here.asked.traceBefore(1);
        boolean right = last >= 0 && here.asked.lastRight(last);
        boolean sure = right && !ChoiceContext.isProduct(last) && here.chanceRight(last) >= SURE_AFTERWARDS;
        if (sure || here.asked.errorsInARow() > MOST_ERRORS) {
            return Optional.empty();
        }
        return surest(SURE).or(() -> right ? Optional.empty() : between());
    }

    /** The surest division that may come, of those that are at least so sure; a neighbour rather than none. */
    private Optional<Turn> surest(double least) {
        int allowed = surest(least, rails::allows);
        int best = allowed >= 0 ? allowed : surest(least, rails::bears);
        return best < 0 ? Optional.empty() : Optional.of(here.ask(best));
    }

    /** The surest that may come; one asked often enough rather than no inverse, or an error as the last of all. */
    private Optional<Turn> between() {
        return surest(0).or(() -> {
            int best = surest(0, rails::bearsOnceMore);
            return best < 0 ? Optional.empty() : Optional.of(here.ask(best));
        });
    }

    private int surest(double least, IntPredicate may) {
        int best = -1;
        double surest = least;
        for (int t = Families.COUNT; t < Trace.COUNT; t++) {
            boolean free = here.asked.owedSince(ChoiceContext.familyOf(t)) == TurnHistory.NEVER;
            double chance = here.isMet(t) && free && may.test(t) ? here.chanceRight(t) : -1;
            if (chance > surest) {
                surest = chance;
                best = t;
            }
        }
        return best;
    }
}
