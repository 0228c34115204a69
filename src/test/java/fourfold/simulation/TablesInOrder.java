// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.simulation.policy20261127.ChoiceContext;
import fourfold.simulation.policy20261127.Ranking;
import java.util.List;

/**
 * A simple policy to compare with: one table after the other. The newest table's facts go round in order, so many times
 * in a drill; then all earlier ones, the longest unasked first. No new family waits for anything.
 */
final class TablesInOrder implements Ranking {
    private static final double NEWEST_FIRST = 90_000;
    private static final double ROUND = 100;

    private final ChoiceContext here;
    private final int rounds;
    private final List<Family> order;
    private final int newest;

    /**
     * The ranking.
     *
     * @param rounds how often the newest table goes round in a drill before earlier ones are asked
     */
    TablesInOrder(ChoiceContext here, int rounds) {
        this.here = here;
        this.rounds = rounds;
        this.order = here.progress().introductionOrder();
        this.newest = newestTable();
    }

    @Override
    public boolean isDue(int trace) {
        return here.times(trace) == 0 || isInItsRounds(trace);
    }

    @Override
    public boolean isWaiting(int trace) {
        return false;
    }

    @Override
    public double value(int trace) {
        int place = order.indexOf(family(trace));
        if (isInItsRounds(trace)) {
            return NEWEST_FIRST - ROUND * here.times(trace) - place;
        }
        return here.today() - here.progress().mastery(trace).lastDayOr(here.today()) - place / ROUND;
    }

    private boolean isInItsRounds(int trace) {
        return family(trace).contains(newest) && here.times(trace) < rounds;
    }

    private static Family family(int trace) {
        return Families.traces().get(trace).family();
    }

    /** The last table in the order of which something was met and that brought a family of its own. */
    private int newestTable() {
        int last = 0;
        for (int table : here.progress().steering().order()) {
            for (Family family : order) {
                boolean own = family.contains(table) && here.isFamilyMet(family.index());
                boolean earlier = last != 0 && family.contains(last);
                last = own && !earlier ? table : last;
            }
        }
        return last;
    }
}
