// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

/**
 * What a child's drills were like lately, the one that is going on included: how much it can carry, how long nothing new
 * came, and what the last drill promised. A fold of the answers; immutable.
 *
 * <p>What a child carries is counted in facts that would be weak at the next drill. It grows by a little with each drill
 * that went well and shrinks by a share with each that did not (additive increase, multiplicative decrease: Chiu and Jain
 * 1989, Computer Networks and ISDN Systems 17, 1–14), so what was found over weeks is not undone by one good day.
 */
public final class RecentDrills {
    /**
     * A drill with fewer questions tells nothing. The numbers of this class are our own choice, set with the benchmark's
     * tuning children.
     */
    private static final int FEWEST = 12;

    private static final double WELL = 0.9;
    private static final double BADLY = 0.85;
    private static final double USUAL_LOAD = 48;
    private static final double LEAST_LOAD = 9;
    private static final double MOST_LOAD = 60;
    private static final double GROWS = 2;
    private static final double SHRINKS_TO = 0.75;
    private static final int MOST_PROMISED = 4;
    private static final UUID NO_DRILL = new UUID(0, 0);

    /** Before any drill. */
    static final RecentDrills NONE = new RecentDrills(new State());

    private final State state;

    private RecentDrills(State state) {
        this.state = state;
    }

    /** With one more answer; {@code met} says whether its family had been met before it. */
    RecentDrills after(Answer answer, boolean met) {
        State next = new State(state);
        next.take(answer, met);
        return new RecentDrills(next);
    }

    /** Many answers, one after the other. */
    static final class Fold {
        private final State state = new State();

        void take(Answer answer, boolean met) {
            state.take(answer, met);
        }

        RecentDrills drills() {
            return new RecentDrills(new State(state));
        }
    }

    /** How many facts that would be weak at the next drill the child can carry, {@value #LEAST_LOAD} to {@value #MOST_LOAD}. */
    public double load() {
        return state.load;
    }

    /** How many of the last drills in a row were right nine times in ten; the one that is going on does not count. */
    public int wellInARow() {
        return state.wellInARow;
    }

    /** How many drills, finished before the one that is going on, brought no new family since the last that did. */
    public int sinceNew() {
        return state.sinceNew;
    }

    /**
     * The families that were missed in the drill before the one with that id: what the child was told would come again. The
     * ones missed most often come first; at most {@value #MOST_PROMISED}.
     */
    public List<Family> promised(UUID drill) {
        int[] misses = drill.equals(state.drill) ? state.missedBefore : state.missed;
        return mostMissed(misses);
    }

    /** The families missed in the drill that is going on, as {@link #promised} will say them in the next. */
    public List<Family> missed() {
        return mostMissed(state.missed);
    }

    private static List<Family> mostMissed(int[] misses) {
        List<Family> families = new ArrayList<>(Families.all());
        families.removeIf(f -> misses[f.index()] == 0);
        families.sort((a, b) -> Integer.compare(misses[b.index()], misses[a.index()]));
        return List.copyOf(families.subList(0, Math.min(MOST_PROMISED, families.size())));
    }

    /** The working copy. */
    private static final class State {
        private UUID drill = NO_DRILL;
        private int asked;
        private int right;
        private boolean brought;
        private int wellInARow;
        private int sinceNew;
        private double load = USUAL_LOAD;
        private int[] missed = new int[Families.COUNT];
        private int[] missedBefore = new int[Families.COUNT];

        State() {}

        State(State from) {
            drill = from.drill;
            asked = from.asked;
            right = from.right;
            brought = from.brought;
            wellInARow = from.wellInARow;
            sinceNew = from.sinceNew;
            load = from.load;
            missed = from.missed.clone();
            missedBefore = from.missedBefore.clone();
        }

        void take(Answer answer, boolean met) {
            if (answer.purpose() == Purpose.COPY) {
                return;
            }
            if (!answer.drill().equals(drill)) {
                close();
                drill = answer.drill();
            }
            boolean correct = answer.isCorrect();
            brought |= !met && (answer.purpose() == Purpose.INTRODUCE || correct);
            // What was asked to find out whether it is known, or in a timing, says nothing about what was practised.
            boolean practice = answer.purpose() != Purpose.PROBE && answer.purpose() != Purpose.TIMED;
            if (answer.purpose().isFromMemory() && practice) {
                asked++;
                if (correct) {
                    right++;
                } else {
                    missed[answer.question().orElseThrow().family().index()]++;
                }
            }
        }

        /** The drill so far is over: what it says about the child is kept. */
        private void close() {
            if (drill.equals(NO_DRILL)) {
                return;
            }
            if (asked >= FEWEST) {
                double share = (double) right / asked;
                wellInARow = share >= WELL ? wellInARow + 1 : 0;
                load = share >= WELL ? load + GROWS : share < BADLY ? load * SHRINKS_TO : load;
                load = Math.max(LEAST_LOAD, Math.min(MOST_LOAD, load));
            }
            sinceNew = brought ? 0 : sinceNew + 1;
            asked = 0;
            right = 0;
            brought = false;
            int[] spare = missedBefore;
            missedBefore = missed;
            missed = spare;
            Arrays.fill(missed, 0);
        }
    }
}
