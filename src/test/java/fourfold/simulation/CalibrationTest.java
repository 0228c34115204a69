// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.memory.Parameters;
import fourfold.scheduling.LastingGain;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Guards against forecasts that sound sure and are not. Before each answer of fifteen weeks to a fact met before, the forecast of
 * "right and quick" is scored beside three references (see {@link ForecastReferences}): no reference may be better on any kind of simulated
 * child, and what is forecast must come true as often as forecast.
 */
class CalibrationTest {
    private static final int WEEKS = 15;
    private static final long[] SEEDS = {301, 302};
    private static final int FEWEST = 300;

    /** What was forecast and what came, over answers. */
    private static final class Score {
        final double[] loss = new double[Probe.NAMES.size()];
        final double[] said = new double[10];
        final int[] came = new int[10];
        final int[] count = new int[10];
        int answers;

        void note(double[] chances, boolean hit) {
            for (int who = 0; who < chances.length; who++) {
                double p = Math.max(0.001, Math.min(0.999, chances[who]));
                loss[who] -= Math.log(hit ? p : 1 - p);
            }
            int tenth = Math.min(9, (int) (chances[0] * 10));
            said[tenth] += chances[0];
            came[tenth] += hit ? 1 : 0;
            count[tenth]++;
            answers++;
        }

        @Override
        public String toString() {
            return String.join(
                    ", ",
                    Arrays.stream(loss)
                            .mapToObj(l -> String.format(Locale.ROOT, "%.4f", l / answers))
                            .toList());
        }
    }

    @Test
    void noReferenceIsBetterThanTheForecastOnAnyKindOfChildAndForecastsKeepTheirWord() {
        Score all = new Score();
        for (SimulatedLearnerKind kind : SimulatedLearnerKind.all()) {
            Score score = new Score();
            for (long seed : SEEDS) {
                follow(kind, seed, List.of(score, all));
            }
            for (int who = 1; who < score.loss.length; who++) {
                String name = Probe.NAMES.get(who);
                assertTrue(
                        score.loss[0] < score.loss[who],
                        () -> name + " beats the forecast on " + kind.name() + " children: " + score);
            }
        }
        for (int tenth = 0; tenth < 10; tenth++) {
            if (all.count[tenth] >= FEWEST) {
                double said = all.said[tenth] / all.count[tenth];
                double came = (double) all.came[tenth] / all.count[tenth];
                assertEquals(said, came, tenth >= 7 ? 0.03 : 0.1, "said to be in tenth " + tenth);
            }
        }
    }

    private static void follow(SimulatedLearnerKind kind, long seed, List<Score> scores) {
        List<Answer> log = new ArrayList<>();
        new SchoolYear(kind.create(seed), new LastingGain(), seed, log::add).run(WEEKS);
        Memory.Fold memory = Memory.blank(Parameters.usual()).fold();
        MotorTime motor = MotorTime.unknown();
        ForecastReferences references = new ForecastReferences();
        boolean[] met = new boolean[Trace.COUNT];
        for (Answer answer : log) {
            int trace = answer.question().map(Question::traceIndex).orElse(-1);
            Optional<Boolean> came = trace < 0 ? Optional.empty() : memory.cameTrue(answer, motor);
            // What was never met here is forecast from the families tried before, not from the trace.
            if (came.isPresent() && met[trace]) {
                long at = answer.askedAt().toEpochMilli();
                double[] chances = {
                    memory.chance(trace, at),
                    references.runningMean(),
                    references.lastFive(trace),
                    references.halfLife(trace, at)
                };
                scores.forEach(score -> score.note(chances, came.get()));
            }
            if (trace >= 0) {
                came.ifPresent(hit -> references.note(trace, answer.askedAt().toEpochMilli(), hit));
                met[trace] = true;
            }
            memory.take(answer, motor);
            motor = motor.after(answer);
        }
    }

    /**
     * On questions drawn at random after each drill of a year, asked next time or not. One child of each kind; the long form,
     * kind by kind with intervals, is the benchmark's.
     */
    @Test
    void onQuestionsDrawnAtRandomTheForecastsAreNeitherTooSureNorTooModest() {
        List<List<Probe>> children = SimulatedLearnerKind.all().stream()
                .map(kind -> Year.of(kind, Policies.named("ours"), SEEDS[0]).probes())
                .toList();
        slope(children, Probe.Horizon.NEXT, 0.2);
        slope(children, Probe.Horizon.DAYS_14, 0.3);
        slope(children, Probe.Horizon.DAYS_60, 0.5);
    }

    private static void slope(List<List<Probe>> children, Probe.Horizon horizon, double bound) {
        List<List<Probe>> ahead = children.stream()
                .map(child -> child.stream().filter(p -> p.horizon() == horizon).toList())
                .toList();
        assertEquals(1, CalibrationLine.of(ahead).slope(), bound, horizon.words());
        double forecast = ForecastTable.logLoss(ahead, 0);
        for (int who = 1; who < Probe.NAMES.size(); who++) {
            double reference = ForecastTable.logLoss(ahead, who);
            assertTrue(forecast < reference, horizon.words() + ": " + forecast + " against " + reference);
        }
    }
}
