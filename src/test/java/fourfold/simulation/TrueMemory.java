// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.progress.DrillSoFar;
import fourfold.simulation.policy20261127.ChoiceContext;
import fourfold.simulation.policy20261127.Ranker;
import fourfold.simulation.policy20261127.Ranking;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A ceiling: ranks by the child's true memory. Its numbers were chosen on the tuning seeds on 2026-11-27 and are frozen
 * with the frame it works in: later policies are measured against it. No proof of an upper bound.
 */
final class TrueMemory implements Ranker, Ranking {
    private static final double LEAST = 0.001;

    /** The best chance of a child whose hands are in time: more is lost by slips alone. */
    private static final double BEST = 0.97;

    private final OpenMind child;
    private final Aim aim;
    private final double[] soon = new double[Trace.COUNT];
    private final double[] worth = new double[Trace.COUNT];
    private final boolean[] stale = new boolean[Trace.COUNT];
    private final boolean[] met = new boolean[Trace.COUNT];
    private Optional<UUID> drill = Optional.empty();
    private int noted;
    private double best;
    private int[] times = new int[0];

    /**
     * What a ceiling aims at.
     *
     * @param dueBelow a trace is due while, left alone, its chance at the next drill is below this; less where the child's
     *     hands are too slow for it
     * @param weakBelow it is weak, and new families wait for it, while that chance is below this
     * @param enough chances above this gain hardly anything more
     * @param later how far ahead a lasting gain is looked at, beside the next drill
     * @param finishes whether families nearest to fluent come first
     */
    record Aim(double dueBelow, double weakBelow, double enough, Duration next, Duration later, boolean finishes) {}

    TrueMemory(SimulatedLearner learner, Aim aim) {
        if (!(learner instanceof OpenMind open)) {
            throw new IllegalArgumentException("a ceiling needs a child whose memory can be looked into");
        }
        this.child = open;
        this.aim = aim;
    }

    /** The chances change little within a drill but for what was just met and its kin; those are looked at again. */
    @Override
    public Ranking rank(ChoiceContext here, long seed) {
        DrillSoFar soFar = here.progress().drill().orElseThrow();
        if (!drill.equals(Optional.of(soFar.session().id()))) {
            drill = Optional.of(soFar.session().id());
            noted = 0;
            best = 0;
            Arrays.fill(stale, true);
        }
        int fresh = soFar.size() - noted;
        noted = soFar.size();
        for (Answer answer : soFar.newestFirst()) {
            if (fresh-- <= 0) {
                break;
            }
            answer.question().ifPresent(q -> q.family().traces().forEach(t -> stale[t.index()] = true));
        }
        Instant start = soFar.session().startedAt();
        times = new int[Trace.COUNT];
        for (int t = 0; t < Trace.COUNT; t++) {
            met[t] = here.isMet(t);
            times[t] = here.times(t);
            if (stale[t] && met[t]) {
                look(t, start, soFar.last().map(Answer::askedAt).orElse(start));
            }
        }
        return this;
    }

    private void look(int t, Instant start, Instant at) {
        Question question = Families.traces().get(t).questions().get(0);
        Instant next = start.plus(aim.next());
        Instant later = start.plus(aim.later());
        best = Math.max(best, child.chanceRightWithin(question, at, Year.LIMIT));
        soon[t] = child.chanceRightWithin(question, next, Year.LIMIT);
        double gain = value(child.chanceIfPractised(question, at, next, Year.LIMIT)) - value(soon[t]);
        gain += value(child.chanceIfPractised(question, at, later, Year.LIMIT))
                - value(child.chanceRightWithin(question, later, Year.LIMIT));
        worth[t] = gain / child.secondsFor(question, at);
        stale[t] = false;
    }

    /** The logarithm of the chance to be fluent: what is far from it gains most, what is fluent hardly any more. */
    private double value(double chance) {
        double p = Math.max(LEAST, Math.min(1 - LEAST, chance));
        double odds = Math.log(p / (1 - p)) - Math.log(aim.enough() / (1 - aim.enough()));
        return -Math.log1p(Math.exp(-odds));
    }

    /** A chance for a child whose hands are quick, as one whose are slow can reach it. */
    private double within(double chance) {
        return chance * Math.min(1, best / BEST);
    }

    @Override
    public boolean isDue(int trace) {
        return times[trace] == 0 && soon[trace] < within(aim.dueBelow());
    }

    @Override
    public boolean isWeak(int trace) {
        return soon[trace] < within(aim.weakBelow());
    }

    @Override
    public double sureness(int trace) {
        return soon[trace];
    }

    @Override
    public double value(int trace) {
        if (!aim.finishes()) {
            return worth[trace];
        }
        Family family = Families.traces().get(trace).family();
        List<Trace> all = family.traces();
        int missing = 0;
        for (Trace other : all) {
            missing += met[other.index()] && soon[other.index()] >= within(aim.weakBelow()) ? 0 : 1;
        }
        return worth[trace] - 10 * missing;
    }
}
