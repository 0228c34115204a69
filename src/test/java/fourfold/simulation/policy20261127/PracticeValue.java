// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import java.time.Duration;

/** The ranking of {@link LastingGain}: what is due, what is weak and what gains most, by the child's memory. */
final class PracticeValue implements Ranking {
    private static final long DAY_MILLIS = 86_400_000L;
    private static final long LONGEST_GAP = 30;
    private static final long LONGEST_GAP_OF_LASTING = 60;

    /** Seconds that a right and a wrong answer cost with what follows them, and log odds that count as fluent. */
    private static final double RIGHT_COSTS = 4;

    private static final double WRONG_COSTS = 9;
    private static final double FLUENT_ODDS = 3.3;

    private final ChoiceContext here;
    private final Rules rules;
    private final Memory memory;
    private final long next;
    private final long later;
    private final Duration sure;
    private final double[] activationNext;

    // Worked out when they are first asked for: half of all turns, the inverses, need none of them.
    private double enough = Double.NaN;
    private double firm = Double.NaN;

    PracticeValue(ChoiceContext here, Rules rules) {
        this.here = here;
        this.rules = rules;
        this.memory = here.memory;
        long start = here.drill.session().startedAt().toEpochMilli();
        this.next = start + rules.nextDrill().toMillis();
        this.later = start + rules.later().toMillis();
        this.activationNext = memory.activations(next);
        this.sure = Duration.ofMillis(here.progress.quick().toMillis() / 2);
    }

    /** Whether the trace, not asked yet, would not be quick enough at the next drill, and has rested as it should. */
    @Override
    public boolean isDue(int trace) {
        if (here.asked.times(trace) > 0 || (activationNext[trace] >= enough() && !restedLong(trace))) {
            return false;
        }
        return !restsStill(trace);
    }

    @Override
    public boolean isWeak(int trace) {
        return activationNext[trace] < firm();
    }

    private double enough() {
        enough = Double.isNaN(enough) ? memory.activationFor(rules.target()) : enough;
        return enough;
    }

    private double firm() {
        firm = Double.isNaN(firm) ? memory.activationFor(rules.firm()) : firm;
        return firm;
    }

    private boolean restedLong(int trace) {
        FactMastery mastery = here.progress.mastery(trace);
        return mastery.asked() > 0 && here.now - memory.lastAsked(trace) >= longestGap(mastery) * DAY_MILLIS;
    }

    private static long longestGap(FactMastery mastery) {
        return mastery.level() == Mastery.LASTING ? LONGEST_GAP_OF_LASTING : LONGEST_GAP;
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

    /** The activation that would be left at the next drill without practice. */
    @Override
    public double sureness(int trace) {
        return activationNext[trace];
    }

    /** Lasting gain per second. */
    @Override
    public double value(int trace) {
        double gain = gain(trace);
        double cost = cost(trace);
        if (rules.pairs() && ChoiceContext.isProduct(trace)) {
            int division = here.weakestDivision(trace, this);
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
