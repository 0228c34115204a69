// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Purpose;
import fourfold.memory.Memory;
import fourfold.progress.DrillSoFar;
import fourfold.progress.FactMastery;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;

/** All that one choice looks at, laid out by trace and family index so that a look costs next to nothing. */
final class ChoiceContext {
    /** A drill that stays below this share of right answers after this many turns asks easy facts. Our own choice. */
    private static final double LEAST_RIGHT = 0.85;

    private static final int ENOUGH_TO_TELL = 12;

    /** Days without practice after which the surest facts come first. Our own choice. */
    private static final long AWAY_DAYS = 21;

    private static final long DAY_MILLIS = 86_400_000L;
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
    final Duration left;
    private final long seed;
    private final Duration quick;
    private final boolean[] met = new boolean[Trace.COUNT];
    private final boolean[] familyMet = new boolean[Families.COUNT];
    private final boolean[] everSure = new boolean[Families.COUNT];
    private final boolean[] accurate = new boolean[Families.COUNT];
    private final boolean[] fluent = new boolean[Families.COUNT];
    private final boolean[] held = new boolean[Families.COUNT];
    private int familiesMet;
    private int familiesMetBefore;

    ChoiceContext(Progress progress, DrillSoFar drill, Instant at, long seed) {
        this.progress = progress;
        this.drill = drill;
        this.seed = seed;
        this.asked = new TurnHistory(drill);
        this.memory = progress.memory();
        this.now = at.toEpochMilli();
        this.today = progress.localDay(at);
        this.practised = drill.practised(at);
        this.left = drill.session().planned().minus(practised);
        this.quick = progress.steering().settings().quick();
        for (Family family : Families.all()) {
            look(family, family.index());
        }
        for (Family family : progress.steering().held()) {
            held[family.index()] = true;
        }
        if (progress.steering().calendar().isFollowed()) {
            for (Family family : Families.all()) {
                held[family.index()] |= progress.isMet(family) && progress.isBeforeItsDate(family);
            }
        }
    }

    private void look(Family family, int f) {
        familyMet[f] = progress.isMet(family);
        familiesMet += familyMet[f] ? 1 : 0;
        everSure[f] = true;
        accurate[f] = true;
        fluent[f] = true;
        lookAt(f, f);
        for (int division : DIVISIONS[f]) {
            lookAt(division, f);
        }
        familiesMetBefore += familyMet[f] && wasAskedBefore(f) ? 1 : 0;
        if (!familyMet[f]) {
            // A product that was only tried owes its inverse once it has been taught.
            asked.forgive(f);
        }
    }

    /** By its divisions: a product may have been only tried, and such a family must not begin to count within a drill. */
    private boolean wasAskedBefore(int f) {
        boolean before = false;
        for (int division : DIVISIONS[f]) {
            before |= progress.mastery(division).asked() > asked.times(division);
        }
        return before;
    }

    private void lookAt(int t, int f) {
        FactMastery mastery = progress.mastery(t);
        met[t] = familyMet[f] && mastery.isMet();
        everSure[f] &= mastery.asked() > 0
                && mastery.right() == mastery.asked()
                && mastery.medianThinking().filter(m -> m.compareTo(quick) <= 0).isPresent();
        accurate[f] &= mastery.level().atLeast(Mastery.ACCURATE);
        fluent[f] &= mastery.level().atLeast(Mastery.FLUENT);
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

    /** Whether easy facts come first now: after weeks away, or when too much of this drill went wrong. */
    boolean isTimeToBeGentle() {
        int turns = asked.turns();
        return (turns >= ENOUGH_TO_TELL && asked.right() < LEAST_RIGHT * turns) || wasAway();
    }

    /** Whether nothing was asked for weeks before this drill. */
    boolean wasAway() {
        long latest = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            latest = asked.times(t) == 0 ? Math.max(latest, memory.lastAsked(t)) : latest;
        }
        long start = drill.session().startedAt().toEpochMilli();
        return latest > 0 && start - latest >= AWAY_DAYS * DAY_MILLIS;
    }

    /** The chance that the trace is answered rightly now, however slowly; for an untaught one that it is known. */
    double chanceRight(int trace) {
        return memory.forecast(trace, now).chanceRight();
    }

    /** Whether the trace was met: asked, or typed with the answer in view, and its family not only tried. */
    boolean isMet(int trace) {
        return met[trace];
    }

    /** Whether any trace of the family was met. */
    boolean isFamilyMet(int family) {
        return familyMet[family];
    }

    /** Of how many families a division was asked from memory before this drill. */
    int familiesMetBefore() {
        return familiesMetBefore;
    }

    /** How many families were met. */
    int familiesMet() {
        return familiesMet;
    }

    /** Whether the parent left the family out for now, by hand or by a date that has not come. */
    boolean isHeld(int family) {
        return held[family];
    }

    /** Whether all facts of the family are accurate. */
    boolean isAccurate(int family) {
        return accurate[family];
    }

    /** Whether a family that was met is not fluent yet; held ones do not count. */
    boolean isAnyNotFluent() {
        for (int f = 0; f < Families.COUNT; f++) {
            if (familyMet[f] && !held[f] && !fluent[f]) {
                return true;
            }
        }
        return false;
    }

    /** How many families were met, are below fluent and were missed, slow or not asked yet; held ones do not count. */
    int unsure() {
        int count = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            count += familyMet[f] && !fluent[f] && !held[f] && !everSure[f] ? 1 : 0;
        }
        return count;
    }

    /** The turn that asks a trace. Both orders of a product take turns; which comes first is a free choice. */
    Turn ask(int t) {
        Trace trace = trace(t);
        Family family = trace.family();
        Question question = isProduct(t)
                ? Question.product(family.low(), family.high())
                : Question.quotient(family, trace.divisor());
        if (isProduct(t) && Mixing.of(seed, asked.turns()) < 0) {
            question = question.turnAround();
        }
        Purpose purpose = !met[t] ? Purpose.PROBE : asked.times(t) > 0 ? Purpose.AGAIN : Purpose.PRACTISE;
        return new Turn(question, purpose);
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
