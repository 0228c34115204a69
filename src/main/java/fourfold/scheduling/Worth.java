package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.memory.Memory;
import fourfold.memory.Parameters;
import fourfold.progress.Mastery;
import fourfold.progress.Standing;
import java.time.Duration;

/** What asking a trace now is worth, by the child's memory. */
final class Worth {
    private static final long DAY_MILLIS = 86_400_000L;
    private static final long LONGEST_GAP = 30;
    private static final long LONGEST_GAP_OF_LASTING = 60;
    private static final int FOCUS_TIMES = 3;

    /** A drill that stays below this share of right answers after so many turns turns to easy facts. Our own choice. */
    private static final double LEAST_RIGHT = 0.85;

    private static final int ENOUGH_TO_TELL = 12;

    /** Days without practice after which the surest facts come first. Our own choice. */
    private static final long AWAY_DAYS = 21;

    /** Seconds that a right and a wrong answer cost with what follows them, and log odds that count as fluent. */
    private static final double RIGHT_COSTS = 4;

    private static final double WRONG_COSTS = 9;
    private static final double FLUENT_ODDS = 3.3;

    private final Situation here;
    private final Rules rules;
    private final Memory memory;
    private final long next;
    private final long later;
    private final Duration sure;
    private final boolean gentle;
    private final double[] activationNext;

    // Worked out when they are first asked for: half of all turns, the inverses, need none of them.
    private double enough = Double.NaN;
    private double firm = Double.NaN;
    private int weak = -1;

    Worth(Situation here, Rules rules) {
        this.here = here;
        this.rules = rules;
        this.memory = here.memory;
        long start = here.drill.sitting().startedAt().toEpochMilli();
        this.next = start + rules.nextDrill().toMillis();
        this.later = start + rules.later().toMillis();
        this.activationNext = memory.activations(next);
        this.sure = here.progress.steering().settings().quick().dividedBy(2);
        this.gentle = isTimeToBeGentle();
    }

    /** Whether easy facts come first now: after weeks away, or when too much of this drill went wrong. */
    private boolean isTimeToBeGentle() {
        int turns = here.asked.turns();
        if (turns >= ENOUGH_TO_TELL && here.asked.right() < LEAST_RIGHT * turns) {
            return true;
        }
        long latest = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            latest = here.asked.times(t) == 0 ? Math.max(latest, memory.lastAsked(t)) : latest;
        }
        long start = here.drill.sitting().startedAt().toEpochMilli();
        return latest > 0 && start - latest >= AWAY_DAYS * DAY_MILLIS;
    }

    /** Whether easy facts come first now. */
    boolean isGentle() {
        return gentle;
    }

    /** The activation that would be left at the next drill without practice. */
    double activationNext(int trace) {
        return activationNext[trace];
    }

    /** The chance of a right answer within the child's limit now. */
    double chanceNow(int trace) {
        return memory.chanceQuick(trace, here.now);
    }

    /** Whether the trace would not be quick enough at the next drill, and has rested as long as it should. */
    boolean isDue(int trace) {
        if (activationNext(trace) >= enough() && !restedLong(trace)) {
            return false;
        }
        return !restsStill(trace);
    }

    /** Whether the parent wants the trace practised, and it was not asked often enough in this drill yet. */
    boolean isFocused(int trace) {
        if (here.progress.steering().focused().isEmpty() || here.asked.times(trace) >= FOCUS_TIMES) {
            return false;
        }
        return here.isMet(trace) && here.progress.isFocused(Families.at(Situation.familyOf(trace)));
    }

    /** Whether a met trace would not be quick enough at the next drill, with what was practised today. */
    boolean isWeak(int trace) {
        return activationNext[trace] < firm() && here.isMet(trace) && !here.isHeld(Situation.familyOf(trace));
    }

    /** How many traces are weak. */
    int weak() {
        weak = weak < 0 ? countWeak() : weak;
        return weak;
    }

    private double enough() {
        enough = Double.isNaN(enough) ? memory.activationFor(rules.target()) : enough;
        return enough;
    }

    private double firm() {
        firm = Double.isNaN(firm) ? memory.activationFor(rules.firm()) : firm;
        return firm;
    }

    private int countWeak() {
        int count = 0;
        for (int t = 0; t < Trace.COUNT; t++) {
            count += isWeak(t) ? 1 : 0;
        }
        return count;
    }

    private boolean restedLong(int trace) {
        Standing standing = here.progress.standing(trace);
        return standing.asked() > 0 && here.now - memory.lastAsked(trace) >= longestGap(standing) * DAY_MILLIS;
    }

    private static long longestGap(Standing standing) {
        return standing.level() == Mastery.LASTING ? LONGEST_GAP_OF_LASTING : LONGEST_GAP;
    }

    /**
     * After success the next gap is no shorter than the one before. Success is an answer within half the limit: a slower
     * one tells that the trace is not sure yet.
     */
    private boolean restsStill(int trace) {
        Standing standing = here.progress.standing(trace);
        if (standing.asked() == 0) {
            return false;
        }
        long bridged = Math.min(longestGap(standing), standing.bridged(sure));
        return bridged > 0 && here.today - standing.lastDayOr(0) < bridged;
    }

    /** Of a family's divisions the one that would be weakest at the next drill; see {@link Situation#weakestDivision}. */
    int weakestDivision(int family) {
        return here.weakestDivision(family, this::activationNext);
    }

    /** How much asking it now is worth: lasting gain per second; the surest first when gentle. */
    double of(int trace) {
        double focus = isFocused(trace) ? 1e6 : 0;
        if (gentle) {
            return focus + memory.activation(trace, here.now);
        }
        double gain = gain(trace);
        double cost = cost(trace);
        if (rules.pairs() && Situation.isProduct(trace)) {
            int division = weakestDivision(trace);
            if (here.asked.times(division) == 0) {
                gain += gain(division);
            }
            cost += cost(division);
        }
        return focus + gain / cost;
    }

    private double gain(int trace) {
        double soon = utility(memory.activationAfterPractice(trace, here.now, next)) - utility(activationNext(trace));
        double lasting = utility(memory.activationAfterPractice(trace, here.now, later))
                - utility(memory.activation(trace, later));
        return soon + lasting;
    }

    private double cost(int trace) {
        double right = chanceNow(trace);
        return RIGHT_COSTS * right + WRONG_COSTS * (1 - right);
    }

    /** Log chance of being fluent: what is far from fluent gains most, what is fluent hardly any more. */
    private double utility(double activation) {
        Parameters p = memory.parameters();
        double odds = (Math.max(-8, activation) - p.threshold()) / p.noise() - FLUENT_ODDS;
        return -Math.log1p(Math.exp(-odds));
    }
}
