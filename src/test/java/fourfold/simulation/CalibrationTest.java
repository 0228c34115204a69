package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.memory.Parameters;
import fourfold.scheduling.LastingGain;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import org.junit.jupiter.api.Test;

/**
 * Guards against forecasts that sound sure and are not. On each kind of simulated child the forecast of "right within 3 s,
 * hands included" must have no higher log loss than three references: the child's running mean, the share of the trace's last
 * five answers, and a half-life rule (p = 2^(−Δ/h), after Settles and Meeder 2016, Proc. 54th ACL, 1848–1858; its weights
 * are our own, tried by hand on other children).
 */
class CalibrationTest {
    private static final int WEEKS = 15;
    private static final double LIMIT_MILLIS = 3000;
    private static final double LEVEL = 0.001;
    private static final List<String> NAMES = List.of("forecast", "running mean", "last five", "half-life");

    @Test
    void no_reference_has_a_lower_log_loss_than_the_forecast_on_any_kind_of_child_and_high_forecasts_keep_their_word() {
        StringBuilder table = new StringBuilder();
        double[] foretold = new double[10];
        double[] came = new double[10];
        double[] count = new double[10];
        for (SimulatedLearnerKind kind : ServiceLoader.load(SimulatedLearnerKind.class)) {
            double[] loss = new double[NAMES.size()];
            double[] brier = new double[NAMES.size()];
            int answers = 0;
            for (long seed : new long[] {301, 302}) {
                answers += follow(kind, seed, loss, brier, foretold, came, count);
            }
            table.append(kind.name());
            for (int m = 0; m < loss.length; m++) {
                table.append(
                        String.format("  %s %.4f (Brier %.4f)", NAMES.get(m), loss[m] / answers, brier[m] / answers));
            }
            table.append(System.lineSeparator());
            for (int m = 1; m < loss.length; m++) {
                // Measured: on short-buffer children level with the running mean (.2943 and .2940), ahead everywhere
                // else.
                assertTrue(loss[0] < loss[m] + LEVEL * answers, NAMES.get(m) + " beats the forecast: " + table);
            }
        }
        for (int bin = 0; bin < count.length; bin++) {
            if (count[bin] < 300) {
                continue;
            }
            double said = foretold[bin] / count[bin];
            double happened = came[bin] / count[bin];
            if (bin >= 7) {
                assertEquals(said, happened, 0.1, "bin " + bin + " " + table);
            } else {
                // Forecasts below .7 are too low for these children (measured: .25 said, .49 true); they must not be
                // too high.
                assertTrue(
                        happened > said - 0.1, "bin " + bin + ": " + said + " said, " + happened + " true; " + table);
            }
        }
    }

    private static int follow(
            SimulatedLearnerKind kind,
            long seed,
            double[] loss,
            double[] brier,
            double[] foretold,
            double[] came,
            double[] count) {
        List<Answer> log = new ArrayList<>();
        new SchoolYear(kind.create(seed), new LastingGain(), seed, log::add).run(WEEKS);
        Memory.Fold memory = Memory.blank(Parameters.usual()).fold();
        MotorTime motor = MotorTime.unknown();
        ForecastReferences references = new ForecastReferences();
        int answers = 0;
        for (Answer answer : log) {
            MotorTime hands = motor;
            if (answer.purpose().isFromMemory()) {
                Question question = answer.question().orElseThrow();
                long at = answer.askedAt().toEpochMilli();
                boolean hit = answer.isCorrect()
                        && hands.thinking(answer)
                                .filter(t -> t.plus(hands.firstKey(42, answer.surface()))
                                                .toMillis()
                                        <= LIMIT_MILLIS)
                                .isPresent();
                double forecast = memory.chance(question.traceIndex(), at);
                double[] chances = {
                    forecast,
                    references.runningMean(),
                    references.lastFive(question.traceIndex()),
                    references.halfLife(question.traceIndex(), at)
                };
                for (int m = 0; m < chances.length; m++) {
                    double p = Math.max(0.001, Math.min(0.999, chances[m]));
                    loss[m] -= Math.log(hit ? p : 1 - p);
                    brier[m] += (p - (hit ? 1 : 0)) * (p - (hit ? 1 : 0));
                }
                int bin = Math.min(9, (int) (forecast * 10));
                foretold[bin] += forecast;
                came[bin] += hit ? 1 : 0;
                count[bin]++;
                references.note(question.traceIndex(), at, hit);
                answers++;
            }
            memory.take(answer, motor);
            motor = motor.after(answer);
        }
        return answers;
    }
}
