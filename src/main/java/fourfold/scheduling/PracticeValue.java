// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.memory.Memory;
import fourfold.memory.Parameters;
import fourfold.progress.FactMastery;
import java.time.Duration;

/** What is due, what is weak and what gains most, by the child's memory. Traces are named by their index. */
final class PracticeValue {
    private static final long DAY_MILLIS = 86_400_000L;
    private static final long LONGEST_GAP = 30;
    private static final long LONGEST_GAP_OF_LASTING = 60;

    /** Seconds that a right and a wrong answer cost with what follows them, and log odds that count as fluent. */
    private static final double RIGHT_COSTS = 4;

    private static final double WRONG_COSTS = 9;
    private static final double FLUENT_ODDS = 3.3;

    /** Of the child's best, what is enough and what is firm for a child who can't reach the rules' own. Our own choice. */
    private static final double TARGET_SHARE = 0.98;

    private static final double FIRM_SHARE = 0.95;

    /** The least that a child's ceiling is taken for, while little is known. Our own choice. */
    private static final double LEAST_BEST = 0.5;

    private final ChoiceContext here;
    private final Rails rails;
    private final Rules rules;
    private final Memory memory;
    private final long next;
    private final long later;
    private final long weeksOn;
    private final Duration sure;
    private final double[] activationNext;

    // Worked out when they are first asked for: half of all turns, the inverses, need none of them.
    private double[] chancesNext = {};
    private double[] chancesLater = {};
    private double best = Double.NaN;

    PracticeValue(ChoiceContext here, Rails rails, Rules rules) {
        this.here = here;
        this.rails = rails;
        this.rules = rules;
        this.memory = here.memory;
        long start = here.drill.session().startedAt().toEpochMilli();
        this.next = start + rules.nextDrill().toMillis();
        this.later = start + rules.later().toMillis();
        this.weeksOn = start + rules.weeksOn().toMillis();
        this.activationNext = memory.activations(next);
        this.sure =
                Duration.ofMillis(here.progress.steering().settings().quick().toMillis() / 2);
    }

    /** Whether the trace, not asked yet, would not be quick enough at the next drill, and has rested as it should. */
    boolean isDue(int trace) {
        if (here.asked.times(trace) > 0 || (isEnough(trace) && !restedLong(trace))) {
            return false;
        }
        return !restsStill(trace);
    }

    /** Whether the trace would be weak at the next drill, with what was practised today. */
    boolean isWeak(int trace) {
        return chancesNext()[trace] < firm();
    }

    /** Whether the trace, not asked yet, would be weak after some weeks without practice. */
    boolean isFading(int trace) {
        return here.asked.times(trace) == 0 && chancesLater()[trace] < firm();
    }

    private double firm() {
        return Math.min(rules.firm(), FIRM_SHARE * best());
    }

    private boolean isEnough(int trace) {
        return chancesNext()[trace] >= target();
    }

    private double target() {
        return Math.min(rules.target(), TARGET_SHARE * best());
    }

    private double[] chancesLater() {
        if (chancesLater.length == 0) {
            chancesLater = memory.chancesQuick(weeksOn);
        }
        return chancesLater;
    }

    private double[] chancesNext() {
        if (chancesNext.length == 0) {
            chancesNext = memory.chancesQuick(next);
        }
        return chancesNext;
    }

    /** The child's own ceiling: the surest fact of those met, asked now. Slow hands and slips keep it below one. */
    private double best() {
        if (Double.isNaN(best)) {
            double[] now = memory.chancesQuick(here.now);
            best = LEAST_BEST;
            for (int t = 0; t < now.length; t++) {
                best = here.isMet(t) ? Math.max(best, now[t]) : best;
            }
        }
        return best;
    }

    private boolean restedLong(int trace) {
        FactMastery mastery = here.progress.mastery(trace);
        return mastery.asked() > 0 && here.now - memory.lastAsked(trace) >= longestGap(mastery) * DAY_MILLIS;
    }

    private static long longestGap(FactMastery mastery) {
        return mastery.hasRested() ? LONGEST_GAP_OF_LASTING : LONGEST_GAP;
    }

    /**
     * After success the next gap is no shorter than the one before. Success is an answer within half the limit: a slower
     * one shows that the trace is not sure yet.
     */
    private boolean restsStill(int trace) {
        FactMastery mastery = here.progress.mastery(trace);
        if (mastery.asked() == 0) {
            return false;
        }
        long bridged = Math.min(longestGap(mastery), mastery.bridged(sure));
        return bridged > 0 && here.today - mastery.lastDayOr(0) < bridged;
    }

    /** The activation that would be left at the next drill without practice: the lowest is the least sure. */
    double sureness(int trace) {
        return activationNext[trace];
    }

    /** Of a family's divisions the one to ask: one that may come, then the one asked less in this drill, then the less sure. */
    int division(int family) {
        int best = -1;
        for (int division : ChoiceContext.divisionsOf(family)) {
            best = best < 0 || comesBefore(division, best) ? division : best;
        }
        return best;
    }

    private boolean comesBefore(int division, int other) {
        boolean may = !rails.rests(division) && rails.turnsLeft(division) > 0;
        boolean otherMay = !rails.rests(other) && rails.turnsLeft(other) > 0;
        if (may != otherMay) {
            return may;
        }
        int times = here.asked.times(division) - here.asked.times(other);
        return times != 0 ? times < 0 : sureness(division) < sureness(other);
    }

    /** Lasting gain per second; that of a product includes its inverse, which follows it. */
    double value(int trace) {
        double gain = gain(trace);
        double cost = cost(trace);
        if (rules.pairs() && ChoiceContext.isProduct(trace)) {
            int division = division(trace);
            if (here.asked.times(division) == 0) {
                gain += gain(division);
            }
            cost += cost(division);
        }
        return gain / cost;
    }

    private double gain(int trace) {
        double soon = utility(memory.activationAfterPractice(trace, here.now, next)) - utility(activationNext[trace]);
        double lasting = utility(memory.activationAfterPractice(trace, here.now, later))
                - utility(memory.activation(trace, later));
        return soon + lasting;
    }

    private double cost(int trace) {
        double right = memory.chanceQuick(trace, here.now);
        return RIGHT_COSTS * right + WRONG_COSTS * (1 - right);
    }

    /** Log chance of being fluent: what is far from fluent gains most, what is fluent hardly any more. */
    private double utility(double activation) {
        Parameters p = memory.parameters();
        double odds = (Math.max(-8, activation) - p.threshold()) / p.noise() - FLUENT_ODDS;
        return -Math.log1p(Math.exp(-odds));
    }
}
