// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.scheduling.Turn;
import java.time.Duration;
import java.util.Optional;
import java.util.function.IntFunction;

/** After the planned time only what is owed is asked, with sure divisions between to keep it apart. */
final class WrapUp {
    private static final Duration LONGEST = Duration.ofSeconds(150);

    private final ChoiceContext here;
    private final IntFunction<Turn> ask;

    WrapUp(ChoiceContext here, IntFunction<Turn> ask) {
        this.here = here;
        this.ask = ask;
    }

    /** The next turn; empty when nothing is owed any more, or the ending has lasted too long. */
    Optional<Turn> turn() {
        boolean owing = false;
        int ready = -1;
        for (int f = 0; f < Families.COUNT; f++) {
            int since = here.asked.owedSince(f);
            if (since == TurnHistory.NEVER || here.isHeld(f)) {
                continue;
            }
            owing = true;
            if (since >= GuardRails.APART
                    && here.asked.ago(Families.at(f)) >= GuardRails.APART
                    && !here.repeats(Families.at(f))
                    && (ready < 0 || since > here.asked.owedSince(ready))) {
                ready = f;
            }
        }
        Duration longest = here.drill.session().planned().plus(LONGEST);
        if (!owing || here.practised.compareTo(longest) >= 0) {
            return Optional.empty();
        }
        return ready >= 0
                ? Optional.of(ask.apply(here.weakest(ready, d -> here.memory.activation(d, here.now))))
                : between();
    }

    /** The surest division that may come between; a neighbour, and at last one that rests, rather than no inverse. */
    private Optional<Turn> between() {
        int best = -1;
        double surest = Double.NEGATIVE_INFINITY;
        for (int pass = 0; pass < 3 && best < 0; pass++) {
            for (int t = Families.COUNT; t < Trace.COUNT; t++) {
                int f = ChoiceContext.familyOf(t);
                boolean may = here.isMet(t)
                        && !here.isHeld(f)
                        && (pass == 2 || !here.rests(t))
                        && here.asked.owedSince(f) >= GuardRails.APART
                        && !here.repeats(Families.at(f))
                        && (pass > 0 || here.allows(Families.at(f)));
                double activation = may ? here.memory.activation(t, here.now) : Double.NEGATIVE_INFINITY;
                if (may && activation > surest) {
                    surest = activation;
                    best = t;
                }
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(ask.apply(best));
    }
}
