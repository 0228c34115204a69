// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.DrillSoFar;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** All that one choice looks at, laid out by trace and family index so that a look costs next to nothing. */
public final class ChoiceContext {
    /** A drill that stays below this share of right answers after this many turns asks easy facts. Our own choice. */
    private static final double LEAST_RIGHT = 0.85;

    private static final int ENOUGH_TO_TELL = 12;

    /** Days without practice after which the surest facts come first. Our own choice. */
    private static final long AWAY_DAYS = 21;

    private static final long DAY_MILLIS = 86_400_000L;
    private static final boolean[][] NEIGHBOURS = neighbours();
    private static final int[][] DIVISIONS = divisions();
    private static final int[] FAMILY_OF =
            Families.traces().stream().mapToInt(t -> t.family().index()).toArray();

    final Progress progress;
    final DrillSoFar drill;
    final TurnHistory asked;
    final Memory memory;
    final long now;
    final long today;
    final Duration practised;
    private final boolean[] met = new boolean[Trace.COUNT];
    private final boolean[] familyMet = new boolean[Families.COUNT];
    private final boolean[] neverMissed = new boolean[Families.COUNT];
    private final boolean[] accurate = new boolean[Families.COUNT];
    private final boolean[] held = new boolean[Families.COUNT];
    private final boolean[] missed = new boolean[Families.COUNT];
    private final boolean[] rests = new boolean[Trace.COUNT];

    /** Worked out when a family is first looked at: most choices look at each several times. */
    private final byte[] allowed = new byte[Families.COUNT];

    ChoiceContext(Progress progress, DrillSoFar drill, Instant at) {
        this.progress = progress;
        this.drill = drill;
        this.asked = new TurnHistory(drill);
        this.memory = progress.memory();
        this.now = at.toEpochMilli();
        this.today = progress.localDay(at);
        this.practised = drill.practised(at);
        java.util.Arrays.fill(accurate, true);
        java.util.Arrays.fill(neverMissed, true);
        for (int i = 0; i < Trace.COUNT; i++) {
            FactMastery mastery = progress.mastery(i);
            met[i] = mastery.isMet();
            familyMet[FAMILY_OF[i]] |= met[i];
            neverMissed[FAMILY_OF[i]] &= mastery.asked() > 0 && mastery.right() == mastery.asked();
            accurate[FAMILY_OF[i]] &= mastery.level().atLeast(Mastery.ACCURATE);
        }
        for (Family family : progress.steering().held()) {
            held[family.index()] = true;
        }
        noteRests();
    }

    private void noteRests() {
        boolean later = progress.steering().settings().divisionsLater();
        for (int t = 0; t < Trace.COUNT; t++) {
            missed[FAMILY_OF[t]] |= asked.errors(t) > 0;
            rests[t] = asked.errors(t) >= GuardRails.MOST_ERRORS;
        }
        for (int f = 0; f < Families.COUNT; f++) {
            boolean all = true;
            for (int division : DIVISIONS[f]) {
                all &= rests[division];
            }
            if (later && !progress.mastery(f).level().atLeast(Mastery.ACCURATE)) {
                for (int division : DIVISIONS[f]) {
                    rests[division] = true;
                }
                asked.forgive(f);
            } else {
                // A product brings its inverse along, so it rests when none of them may come.
                rests[f] |= all;
            }
        }
    }

    /**
     * Whether the trace is left out for the rest of this drill: missed twice, or a division whose product must be accurate
     * first because the parent wants divisions later.
     */
    boolean rests(int trace) {
        return rests[trace];
    }

    /** The index of the family of the trace with that index. */
    static int familyOf(int trace) {
        return FAMILY_OF[trace];
    }

    static Trace trace(int index) {
        return Families.traces().get(index);
    }

    static boolean isProduct(int trace) {
        return trace < Families.COUNT;
    }

    /** The divisions of the family with that index: one or two traces. */
    static int[] divisionsOf(int family) {
        return DIVISIONS[family];
    }

    /**
     * The weaker of a family's divisions: one that rests comes last, then the one asked less in this drill comes first, then
     * the less sure.
     */
    int weakestDivision(int family, Ranking ranking) {
        return weakest(family, asked::times, ranking::sureness);
    }

    /** Of a family's divisions the first by these numbers, the first of which decides most; one that rests comes last. */
    int weakest(int family, IntToDoubleFunction... order) {
        int best = -1;
        for (int division : DIVISIONS[family]) {
            best = best < 0 || comesBefore(division, best, order) ? division : best;
        }
        return best;
    }

    private boolean comesBefore(int division, int other, IntToDoubleFunction... order) {
        if (rests[division] != rests[other]) {
            return rests[other];
        }
        for (IntToDoubleFunction by : order) {
            double here = by.applyAsDouble(division);
            double there = by.applyAsDouble(other);
            if (here != there) {
                return here < there;
            }
        }
        return false;
    }

    /** Whether easy facts come first now: after weeks away, or when too much of this drill went wrong. */
    boolean isTimeToBeGentle() {
        int turns = asked.turns();
        if (turns >= ENOUGH_TO_TELL && asked.right() < LEAST_RIGHT * turns) {
            return true;
        }
        long latest = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            latest = asked.times(t) == 0 ? Math.max(latest, memory.lastAsked(t)) : latest;
        }
        long start = drill.session().startedAt().toEpochMilli();
        return latest > 0 && start - latest >= AWAY_DAYS * DAY_MILLIS;
    }

    /** What the child has reached, with the drill that is going on. */
    public Progress progress() {
        return progress;
    }

    /** Today, as days since 1970 where the child is. */
    public long today() {
        return today;
    }

    /** How many questions were asked from memory in this drill. */
    public int turns() {
        return asked.turns();
    }

    /** How often the trace with that index was asked in this drill. */
    public int times(int trace) {
        return asked.times(trace);
    }

    /** Whether the trace with that index was met: asked, or typed with the answer in view. */
    public boolean isMet(int trace) {
        return met[trace];
    }

    /** Whether any trace of the family with that index was met. */
    public boolean isFamilyMet(int family) {
        return familyMet[family];
    }

    boolean isHeld(int family) {
        return held[family];
    }

    boolean isAccurate(int family) {
        return accurate[family];
    }

    /** How many families were met, are below accurate and were missed or not asked yet; held ones do not count. */
    int shaky() {
        int count = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            count += familyMet[f] && !accurate[f] && !held[f] && !neverMissed[f] ? 1 : 0;
        }
        return count;
    }

    /** How often the least asked of all traces met so far was asked from memory; held ones do not count. */
    int leastAsked() {
        int least = Integer.MAX_VALUE;
        for (int t = 0; t < Trace.COUNT; t++) {
            least = met[t] && !held[FAMILY_OF[t]]
                    ? Math.min(least, progress.mastery(t).asked())
                    : least;
        }
        return least;
    }

    /** Whether the rails allow a fact of the trace with that index now; see {@link GuardRails}. */
    boolean allows(int trace) {
        return !rests[trace] && allowsFamily(FAMILY_OF[trace]);
    }

    /** Whether the rails allow a fact of this family now. */
    boolean allows(Family family) {
        return allowsFamily(family.index());
    }

    private boolean allowsFamily(int f) {
        if (allowed[f] == 0) {
            allowed[f] = (byte) (mayCome(Families.at(f)) ? 1 : -1);
        }
        return allowed[f] > 0;
    }

    private boolean mayCome(Family family) {
        int f = family.index();
        if (held[f] || asked.ago(family) < GuardRails.APART) {
            return false;
        }
        List<Question> recent = asked.recent();
        for (int i = 0; i < recent.size(); i++) {
            Family before = asked.recentFamily(i);
            if (i == 0 && before.product() == family.product()) {
                return false;
            }
            if (NEIGHBOURS[before.index()][f] && !(isSure(before.index()) && isSure(f))) {
                return false;
            }
        }
        return true;
    }

    /** Accurate, and not missed in this drill either. */
    private boolean isSure(int family) {
        return accurate[family] && !missed[family];
    }

    /** Whether the last question had the same product. */
    boolean repeats(Family family) {
        return !asked.recent().isEmpty() && asked.recentFamily(0).product() == family.product();
    }

    private static boolean[][] neighbours() {
        boolean[][] all = new boolean[Families.COUNT][Families.COUNT];
        for (Family a : Families.all()) {
            for (Family b : Families.all()) {
                all[a.index()][b.index()] = GuardRails.areNeighbours(a, b);
            }
        }
        return all;
    }

    private static int[][] divisions() {
        int[][] all = new int[Families.COUNT][];
        for (Family family : Families.all()) {
            all[family.index()] = family.traces().stream()
                    .filter(t -> t.operation() == Operation.DIVIDE)
                    .mapToInt(Trace::index)
                    .toArray();
        }
        return all;
    }
}
