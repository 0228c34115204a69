// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Holds forecasts against the truth: after each drill a few questions are drawn at random among all whose trace was asked,
 * whatever the policy wishes to ask, and looked at three times ahead.
 */
final class Probes {
    private static final int EACH_DRILL = 4;
    private static final List<Question> ALL = Families.questions();

    private final Policy policy;
    private final Scheduler scheduler;
    private final SimulatedLearner child;
    private final SplittableRandom dice;
    private final ForecastReferences references = new ForecastReferences();
    private final List<Probe> probes = new ArrayList<>();

    Probes(Policy policy, Scheduler scheduler, SimulatedLearner child, long seed) {
        this.policy = policy;
        this.scheduler = scheduler;
        this.child = child;
        this.dice = new SplittableRandom(seed * 131 + 7);
    }

    /** What was drawn so far. */
    List<Probe> all() {
        return probes;
    }

    /** The references learn from an answer. */
    void note(Answer answer) {
        if (answer.purpose().isFromMemory()) {
            boolean quick =
                    answer.firstKey().filter(f -> f.compareTo(Year.LIMIT) <= 0).isPresent();
            references.note(
                    answer.question().orElseThrow().traceIndex(),
                    answer.askedAt().toEpochMilli(),
                    answer.isCorrect() && quick);
        }
    }

    /** Draws after a drill. */
    void draw(Progress reached, Instant end, Instant next) {
        for (int i = 0; i < EACH_DRILL; i++) {
            Question question = ALL.get(dice.nextInt(ALL.size()));
            if (references.wasAsked(question.traceIndex())) {
                probe(Probe.Horizon.NEXT, question, reached, next);
                probe(Probe.Horizon.DAYS_14, question, reached, end.plus(Duration.ofDays(14)));
                probe(Probe.Horizon.DAYS_60, question, reached, end.plus(Duration.ofDays(60)));
            }
        }
    }

    private void probe(Probe.Horizon horizon, Question question, Progress reached, Instant at) {
        int trace = question.traceIndex();
        OptionalDouble said = policy.forecast(scheduler, reached, trace, at);
        if (said.isPresent()) {
            probes.add(new Probe(
                    horizon,
                    (float) said.getAsDouble(),
                    (float) references.runningMean(),
                    (float) references.lastFive(trace),
                    (float) references.halfLife(trace, at.toEpochMilli()),
                    (float) child.chanceRightWithin(question, at, Year.LIMIT)));
        }
    }
}
