// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.policy20261127.ChoiceContext;
import fourfold.simulation.policy20261127.FactMastery;
import fourfold.simulation.policy20261127.Ranking;

/**
 * A simple policy to compare with: five boxes (Leitner 1972, So lernt man lernen). A trace moves one box on with every day
 * that begins right and back to the first with an error; boxes come up after 1, 2, 4, 8 and 16 days, lower boxes first.
 */
final class FiveBoxes implements Ranking {
    private static final long LONGEST = 16;

    private final ChoiceContext here;

    FiveBoxes(ChoiceContext here) {
        this.here = here;
    }

    @Override
    public boolean isDue(int trace) {
        FactMastery mastery = here.progress().mastery(trace);
        return here.times(trace) == 0
                && mastery.lastDay()
                        .map(last -> here.today() - last >= days(trace))
                        .orElse(true);
    }

    @Override
    public double value(int trace) {
        return -days(trace);
    }

    /** Days until the trace's box comes up: 1, 2, 4, 8 or 16. */
    private long days(int trace) {
        FactMastery mastery = here.progress().mastery(trace);
        long last = mastery.lastDayOr(0);
        return Math.min(LONGEST, mastery.dueDay().map(due -> due - last).orElse(1L));
    }
}
