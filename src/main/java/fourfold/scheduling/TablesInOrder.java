package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A simple policy to compare with: one table after the other. The newest table's facts go round in order, so many times
 * in a drill; then all earlier ones, the longest unasked first. The next family joins while nothing of the table is new.
 */
public final class TablesInOrder implements Scheduler {
    private final Rules rules;
    private final int rounds;

    /**
     * The policy.
     *
     * @param rules of which only those about openings and re-asks matter
     * @param rounds how often the newest table goes round in a drill before earlier ones are asked
     */
    public TablesInOrder(Rules rules, int rounds) {
        this.rules = rules;
        this.rounds = rounds;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        Situation here = new Situation(progress, progress.drill().orElseThrow(), at);
        List<Family> order = progress.introductionOrder();
        int newest = newestTable(here, order);
        int[] place = new int[Families.COUNT];
        for (int i = 0; i < order.size(); i++) {
            place[order.get(i).index()] = i;
        }
        Ranking inOrder = new Ranking() {
            @Override
            public double of(int trace) {
                int f = Situation.familyOf(trace);
                int times = here.asked.times(trace);
                if (Families.at(f).contains(newest) && times < rounds) {
                    return 1e6 - 1000.0 * times - place[f];
                }
                long last = progress.standing(trace).lastDayOr(0);
                return times > 0 ? Double.NEGATIVE_INFINITY : -last - place[f] / 100.0;
            }

            @Override
            public int waiting() {
                return 0;
            }
        };
        return new PlainChoice(here, rules, inOrder, seed).turn();
    }

    /** The last table in the order of which something was met and that brought a family of its own. */
    private static int newestTable(Situation here, List<Family> order) {
        int newest = 0;
        for (int table : here.progress.steering().order()) {
            for (Family family : order) {
                boolean own = family.contains(table) && here.isFamilyMet(family.index());
                boolean earlier = newest != 0 && family.contains(newest);
                newest = own && !earlier ? table : newest;
            }
        }
        return newest;
    }
}
