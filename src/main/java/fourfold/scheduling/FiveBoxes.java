package fourfold.scheduling;

import fourfold.facts.Trace;
import fourfold.progress.Progress;
import fourfold.progress.Standing;
import java.time.Instant;
import java.util.Optional;

/**
 * A simple policy to compare with: five boxes (Leitner 1972, So lernt man lernen). A trace moves one box on with every day
 * that begins right and back to the first with an error; boxes come up after 1, 2, 4, 8 and 16 days, lower boxes first.
 */
public final class FiveBoxes implements Scheduler {
    private static final long LONGEST = 16;

    /** Days of the second box: what is no further is weak. */
    private static final long LOW_BOX = 2;

    private final Rules rules;

    /** The policy; of the rules only those about openings and re-asks matter. */
    public FiveBoxes(Rules rules) {
        this.rules = rules;
    }

    @Override
    public Optional<Turn> next(Progress progress, Instant at, long seed) {
        Situation here = new Situation(progress, progress.drill().orElseThrow(), at);
        Ranking boxes = new Ranking() {
            @Override
            public double of(int trace) {
                return isDue(here, trace) ? -gap(here, trace) : Double.NEGATIVE_INFINITY;
            }

            @Override
            public int waiting() {
                int count = 0;
                for (int t = 0; t < Trace.COUNT; t++) {
                    count += isDue(here, t) ? 1 : 0;
                }
                return count;
            }

            @Override
            public int weak() {
                int count = 0;
                for (int t = 0; t < Trace.COUNT; t++) {
                    count += here.isMet(t) && gap(here, t) <= LOW_BOX ? 1 : 0;
                }
                return count;
            }
        };
        return new PlainChoice(here, rules, boxes, seed).turn();
    }

    private static boolean isDue(Situation here, int trace) {
        if (!here.isMet(trace) || here.asked.times(trace) > 0 || here.isHeld(Situation.familyOf(trace))) {
            return false;
        }
        Standing standing = here.progress.standing(trace);
        return standing.lastDay()
                .map(last -> here.today - last >= gap(here, trace))
                .orElse(true);
    }

    /** Days until the trace's box comes up: 1, 2, 4, 8 or 16. */
    private static long gap(Situation here, int trace) {
        Standing standing = here.progress.standing(trace);
        long last = standing.lastDayOr(0);
        return Math.min(LONGEST, standing.dueDay().map(due -> due - last).orElse(1L));
    }
}
