// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.memory.Parameters;
import fourfold.progress.Steering;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The program's own forecasts held against what then happened: before each answer from memory the chance was forecast that
 * it would be right and within the child's limit, hands included. Folded from the log; nothing of it is stored.
 *
 * @param tenths ten of them: what was said to be 0 to 10 %, 10 to 20 %, up to 90 to 100 %
 * @param logLoss the mean of −ln of the chance given to what happened, 0 or more; the lower, the better. Not a number
 *     without answers
 * @param logLossOfMean the same for one who knows nothing but the share that came true until then
 */
public record ForecastRecord(List<Tenth> tenths, double logLoss, double logLossOfMean) {
    private static final int TENTHS = 10;

    /** Chances nearer to 0 or 1 count as this near, so that one odd answer does not decide everything. Our own choice. */
    private static final double LEAST = 0.001;

    /**
     * The answers forecast in one tenth.
     *
     * @param answers how many
     * @param forecast the mean of what was forecast, 0 to 1; not a number without answers
     * @param came the share of them that were right and quick, 0 to 1; not a number without answers
     */
    public record Tenth(int answers, double forecast, double came) {}

    public ForecastRecord {
        tenths = List.copyOf(tenths);
    }

    /** How many answers were forecast. */
    public int answers() {
        return tenths.stream().mapToInt(Tenth::answers).sum();
    }

    /** The record of a whole log. */
    public static ForecastRecord of(Steering steering, List<Answer> oldestFirst) {
        Fold fold = new Fold(steering);
        oldestFirst.forEach(fold);
        return fold.record();
    }

    /** Takes a child's answers, oldest first, then tells what they come to. */
    public static final class Fold implements Consumer<Answer> {
        private final Steering steering;
        private final Memory.Fold memory;
        private final int[] counts = new int[TENTHS];
        private final double[] forecasts = new double[TENTHS];
        private final int[] came = new int[TENTHS];
        private MotorTime motor = MotorTime.unknown();
        private int answers;
        private int quick;
        private double loss;
        private double lossOfMean;

        /** A fold under what the parent's actions came to. */
        public Fold(Steering steering) {
            this.steering = steering;
            this.memory = Memory.blank(
                            Parameters.usual().withLimit(steering.settings().quick()))
                    .fold();
        }

        @Override
        public void accept(Answer answer) {
            Optional<Question> question = answer.question();
            if (question.isPresent() && counts(answer, question.get())) {
                Optional<Boolean> outcome = memory.cameTrue(answer, motor);
                if (outcome.isPresent()) {
                    long at = answer.askedAt().toEpochMilli();
                    note(memory.chance(question.get().traceIndex(), at), outcome.get());
                }
                memory.take(answer, motor);
            }
            motor = motor.after(answer);
        }

        /** A family begun again is forecast as if it had never been asked. */
        private boolean counts(Answer answer, Question question) {
            return steering.resets().isEmpty()
                    || steering.begunAgain(question.family())
                            .filter(since -> answer.askedAt().isBefore(since))
                            .isEmpty();
        }

        private void note(double chance, boolean hit) {
            int tenth = Math.min(TENTHS - 1, (int) (chance * TENTHS));
            counts[tenth]++;
            forecasts[tenth] += chance;
            came[tenth] += hit ? 1 : 0;
            loss += loss(chance, hit);
            // One of two to begin with, so that the mean is a chance from the first answer on.
            lossOfMean += loss((quick + 1.0) / (answers + 2.0), hit);
            answers++;
            quick += hit ? 1 : 0;
        }

        private static double loss(double chance, boolean hit) {
            double p = Math.max(LEAST, Math.min(1 - LEAST, chance));
            return -Math.log(hit ? p : 1 - p);
        }

        /** What all answers so far come to. */
        public ForecastRecord record() {
            List<Tenth> tenths = new ArrayList<>();
            for (int i = 0; i < TENTHS; i++) {
                tenths.add(new Tenth(counts[i], forecasts[i] / counts[i], (double) came[i] / counts[i]));
            }
            return new ForecastRecord(tenths, loss / answers, lossOfMean / answers);
        }
    }
}
