// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Surface;
import fourfold.memory.Forecast;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.progress.FactMastery;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;

/**
 * A learner made of what a real child's answers say: it recalls with the chance and in the time that the fitted memory
 * forecasts, and that memory takes each of its answers. How far the child lies from the fit is not known, so each such
 * learner is a little slower or quicker, and more or less sure, than the fit. These spreads are our own choice; how often
 * the projection's range then holds is measured on children of other kinds.
 */
final class FittedLearner implements Learner {
    private static final double PACE_SPREAD = 0.03;
    private static final double CHANCE_SPREAD = 0.1;
    private static final double TIME_SPREAD = 0.35;
    /** One in a hundred recalled answers is mistyped, as the memory takes it, until a child's own answers say otherwise. */
    private static final double SLIPS = 0.01;

    /** How many of the child's answers weigh as much as that. */
    private static final double SLIPS_WEIGHT = 100;

    private static final double WORKED_OUT = 0.75;
    private static final Duration WORKING_OUT = Duration.ofSeconds(6);

    private final SplittableRandom random;
    private final double slower;
    private final double surer;
    private final double slips;
    private final MotorTime motor;
    private Memory memory;

    FittedLearner(Progress progress, long seed) {
        this.memory = progress.memory();
        this.motor = progress.motor();
        this.random = new SplittableRandom(seed);
        this.slower = Math.exp(PACE_SPREAD * random.nextGaussian());
        this.surer = CHANCE_SPREAD * random.nextGaussian();
        this.slips = slips(progress);
    }

    /** The child's own share of mistyped answers: of the newest answers to what is fluent, the wrong ones. */
    private static double slips(Progress progress) {
        double wrong = SLIPS_WEIGHT * SLIPS;
        double answers = SLIPS_WEIGHT;
        for (int trace = 0; trace < Trace.COUNT; trace++) {
            FactMastery mastery = progress.mastery(trace);
            if (mastery.level().atLeast(Mastery.FLUENT)) {
                answers += mastery.recent();
                wrong += mastery.recent() - mastery.rightOfLast(mastery.recent());
            }
        }
        return wrong / answers;
    }

    /** From now on with the memory that the answers so far come to. */
    @Override
    public void known(Progress now) {
        memory = now.memory();
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        Forecast forecast = memory.forecast(question.traceIndex(), askedAt.toEpochMilli());
        boolean recalled = random.nextDouble() < shifted(forecast.chanceRecalled());
        double median = (recalled ? forecast.medianThinking() : WORKING_OUT).toMillis();
        long thinking = Math.round(median * slower * Math.exp(TIME_SPREAD * random.nextGaussian()));
        boolean right = random.nextDouble() < (recalled ? 1 - slips : WORKED_OUT);
        int number = right ? question.expected() : question.expected() + 1 + random.nextInt(3);
        return typed(number, thinking);
    }

    private double shifted(double chance) {
        double odds = Math.log(Math.max(1e-6, chance) / Math.max(1e-6, 1 - chance)) + surer;
        return 1 / (1 + Math.exp(-odds));
    }

    private Reply typed(int number, long thinkingMillis) {
        Duration first = motor.firstKey(number, Surface.TERMINAL).plusMillis(thinkingMillis);
        Duration whole = motor.whole(number, Surface.TERMINAL).plusMillis(thinkingMillis);
        return new Reply(Integer.toString(number), first, whole.compareTo(first) < 0 ? first : whole);
    }

    /** Nothing to do: the drill keeps what is typed with the fact in view, and the memory takes it from there. */
    @Override
    public void shown(Fact fact, Instant at) {}

    @Override
    public Reply copy(String digits, Instant at) {
        return typed(Integer.parseInt(digits), 0);
    }
}
