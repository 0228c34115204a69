// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * Guards against a memory that is fast and wrong: one trace is worked out here in the plain, presentation by presentation
 * with {@link Equations}, and the memory has to come to the same.
 */
class OneTraceTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final int RATES = USUAL.rates;
    private static final double TRUST = USUAL.priorStrength;
    private static final double SPREAD = USUAL.rateSpread;
    private static final double DRIFT = USUAL.drift;
    private static final double SCALE = USUAL.decayScale;
    private static final double STRONGEST = Math.exp(USUAL.strongest);
    private static final double BROUGHT = Math.exp(USUAL.broughtAlong);
    private static final double BROUGHT_AGE = USUAL.broughtAge;
    private static final Question ASKED = Question.product(7, 8);
    private static final Duration HANDS = MotorTime.unknown().firstKey(56, Surface.TERMINAL);

    /** The model of one product, exact and slow. */
    private static final class Plain {
        private final List<double[]> decays = new ArrayList<>();
        private final List<Double> times = new ArrayList<>();
        private final double[] evidence = new double[RATES];
        private double[] weights = new double[RATES];
        private double broughtAt = Double.NaN;
        private double rate = Double.NaN;
        private double clock;
        private Instant last = Given.START;
        private int answers;
        private Pace pace = Pace.usual(USUAL);
        private Offset slower = Offset.unknown(USUAL.tracesDifferInTime);
        private Offset surer = Offset.unknown(USUAL.tracesDifferInOdds);

        Plain() {
            java.util.Arrays.fill(evidence, 1);
        }

        private double clockAt(Instant at) {
            double seconds = Duration.between(last, at).toMillis() / 1000.0;
            return clock + Math.min(seconds, USUAL.pause) + USUAL.betweenDrills * Math.max(0, seconds - USUAL.pause);
        }

        private double strength(int k, double at) {
            double sum = 0;
            for (int i = 0; i < times.size(); i++) {
                sum += Math.pow(at - times.get(i), -decays.get(i)[k]);
            }
            if (!Double.isNaN(broughtAt)) {
                sum += BROUGHT * Math.pow((BROUGHT_AGE + at - broughtAt) / BROUGHT_AGE, -USUAL.rate(k));
            }
            return sum;
        }

        double activation(Instant at) {
            double now = clockAt(at);
            double sum = 0;
            for (int k = 0; k < RATES; k++) {
                sum += weights[k] * strength(k, now);
            }
            return Math.log(sum);
        }

        double chanceQuick(Instant at) {
            return pace.correction().chance(plain(activation(at)), days(at), surer);
        }

        private double plain(double activation) {
            return new Recall(enough(), level(), USUAL).chance(activation);
        }

        private Speed.Level level() {
            return pace.speed().level(ASKED.traceIndex(), slower);
        }

        private double days(Instant at) {
            return Duration.between(last, at).toMillis() / 86_400_000.0;
        }

        private static double enough() {
            return USUAL.limit - HANDS.toMillis() / 1000.0;
        }

        void take(Answer answer, double seconds) {
            Instant at = answer.askedAt();
            double now = clockAt(at);
            double[] strengths = new double[RATES];
            for (int k = 0; k < RATES; k++) {
                strengths[k] = strength(k, now);
            }
            if (answer.purpose() != Purpose.INTRODUCE) {
                boolean recalled = answer.isCorrect() && seconds <= enough();
                if (times.isEmpty() && recalled) {
                    broughtAt = now;
                    for (int k = 0; k < RATES; k++) {
                        strengths[k] = BROUGHT;
                    }
                }
                weigh(answer.isCorrect(), recalled, seconds, strengths, at);
            }
            double[] own = new double[RATES];
            for (int k = 0; k < RATES; k++) {
                own[k] = USUAL.rate(k) + SCALE * Math.min(STRONGEST, strengths[k]);
            }
            decays.add(own);
            times.add(now);
            clock = now;
            last = at;
            mix();
        }

        private void weigh(boolean right, boolean recalled, double seconds, double[] strengths, Instant at) {
            boolean met = !times.isEmpty();
            double foreseen = met ? activation(at) : Double.NEGATIVE_INFINITY;
            if (met) {
                Correction.Learned learned = pace.correction().after(plain(foreseen), days(at), surer, recalled);
                pace = new Pace(pace.speed(), learned.correction());
                surer = learned.own();
            }
            Likelihood likelihood = new Likelihood(right, Math.log(seconds), level(), USUAL);
            double sum = 0;
            for (int k = 0; k < RATES; k++) {
                evidence[k] *= likelihood.at(Math.log(strengths[k]));
                sum += evidence[k];
            }
            for (int k = 0; k < RATES; k++) {
                evidence[k] = (1 - DRIFT) * evidence[k] / sum + DRIFT / RATES;
            }
            if (right && met) {
                double atNought = Math.log(seconds) + USUAL.speedUp * foreseen;
                Speed.Learned learned =
                        pace.speed().after(ASKED.traceIndex(), slower, atNought, likelihood.shareRecalled(foreseen));
                pace = new Pace(learned.speed(), pace.correction());
                slower = learned.own();
            }
            answers++;
        }

        /** Evidence times a normal density around the rate expected: the usual one, moved by the child's own mean. */
        private void mix() {
            double own = Double.isNaN(rate) ? 0 : rate - USUAL.usualRate;
            double expected = USUAL.usualRate + (Double.isNaN(rate) ? 0 : own / (1 + TRUST));
            double sum = 0;
            weights = new double[RATES];
            for (int k = 0; k < RATES; k++) {
                double off = (USUAL.rate(k) - expected) / SPREAD;
                weights[k] = evidence[k] * Math.exp(-off * off / 2);
                sum += weights[k];
            }
            double mean = 0;
            for (int k = 0; k < RATES; k++) {
                weights[k] /= sum;
                mean += weights[k] * USUAL.rate(k);
            }
            rate = answers > 0 ? mean : rate;
        }
    }

    @Property(tries = 60)
    void theMemoryOfOneFactIsThatOfTheEquations(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int presentations) {
        SplittableRandom dice = new SplittableRandom(seed);
        double skill = dice.nextDouble(0.3, 1);
        Plain plain = new Plain();
        Memory memory = Memory.blank(USUAL);
        Instant at = Given.START;
        for (int i = 0; i < presentations; i++) {
            double seconds = Math.rint(dice.nextDouble(0.3, 5) * 1000) / 1000;
            Answer answer = dice.nextInt(6) == 0
                    ? Given.shown(ASKED, at)
                    : dice.nextDouble() < skill ? Given.right(ASKED, at, seconds) : Given.wrong(ASKED, at, seconds);
            plain.take(answer, seconds);
            memory = memory.after(answer, MotorTime.unknown());
            at = at.plusSeconds(dice.nextInt(3) == 0 ? dice.nextInt(4_000, 500_000) : dice.nextInt(5, 300));
        }
        Trace trace = ASKED.trace();
        for (long gap : new long[] {0, 100, 86_400, 20 * 86_400L}) {
            Instant later = at.plusSeconds(gap);
            assertEquals(plain.activation(later), memory.forecast(trace, later).activation(), 0.01);
            assertEquals(plain.chanceQuick(later), memory.chanceQuick(trace.index(), later.toEpochMilli()), 0.003);
        }
    }
}
