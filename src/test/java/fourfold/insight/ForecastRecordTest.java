// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.NumberToCopy;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.insight.ForecastRecord.Tenth;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.memory.Parameters;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.SimulatedLearnerKind;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Guards against a record that flatters: forecasts made after the fact, answers left out, or a yardstick bent. */
class ForecastRecordTest {
    private static final Instant START = Instant.parse("2027-01-04T16:00:00Z");
    private static final Question ASKED = Question.product(7, 8);

    private static Answer answer(Prompt prompt, Purpose purpose, String typed, long firstKey, long minutes) {
        Duration first = Duration.ofMillis(firstKey);
        Optional<Duration> key = typed.isEmpty() ? Optional.empty() : Optional.of(first);
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), (int) minutes + 1),
                new Moment(START.plus(Duration.ofMinutes(minutes)), 0),
                purpose,
                prompt,
                new Answer.Typing(typed, new Answer.Times(key, Optional.of(first.plusMillis(600))), 0),
                Surface.TERMINAL);
    }

    private static Answer asked(String typed, long firstKey, long minutes) {
        return answer(ASKED, Purpose.PROBE, typed, firstKey, minutes);
    }

    /** Half of what was never taught here is known, until the child's own probes say otherwise: so .5 is forecast. */
    @ParameterizedTest
    @CsvSource({
        "56, 1000, 1, right and quick",
        "56, 2900, 1, just within three seconds from the paint to the first key",
        "56, 3100, 0, too slow",
        "54, 1000, 0, wrong",
        "'', 20000, 0, no answer",
    })
    void aFirstAnswerIsForecastAsUntaughtAndComesTrueIfRightAndQuick(
            String typed, long firstKey, double came, String what) {
        ForecastRecord record = ForecastRecord.of(Steering.NONE, List.of(asked(typed, firstKey, 0)));
        double chance = untaught();
        assertAll(
                what,
                () -> assertEquals(1, record.answers()),
                () -> assertEquals(new Tenth(1, chance, came), record.tenths().get((int) (10 * chance))),
                () -> assertEquals(-Math.log(came == 1 ? chance : 1 - chance), record.logLoss(), 1e-12),
                () -> assertEquals(Math.log(2), record.logLossOfMean(), 1e-12));
    }

    @Test
    void noAnswerNoNumberToCopyAndNothingInViewIsForecast() {
        List<Answer> log = List.of(
                answer(new NumberToCopy(42), Purpose.COPY, "42", 800, 0),
                answer(ASKED, Purpose.INTRODUCE, "56", 800, 1));
        ForecastRecord record = ForecastRecord.of(Steering.NONE, log);
        assertEquals(0, record.answers());
        assertEquals(10, record.tenths().size());
        assertTrue(Double.isNaN(record.logLoss()));
    }

    @Test
    void aFamilyBegunAgainIsForecastAsNeverAsked() {
        List<Answer> log = List.of(asked("54", 1000, 0), asked("54", 1000, 30), asked("56", 1000, 90));
        Steering again = Steering.of(List.of(new ActionRecord(
                new UUID(3, 3),
                new UUID(1, 1),
                START.plus(Duration.ofMinutes(60)),
                0,
                new ParentAction.Reset(ASKED.family()))));
        ForecastRecord record = ForecastRecord.of(again, log);
        assertEquals(1, record.answers());
        double chance = untaught();
        assertEquals(new Tenth(1, chance, 1), record.tenths().get((int) (10 * chance)));
    }

    /** The chance that the family is known though nothing was asked or taught. */
    private static double untaught() {
        return Progress.blank(Steering.NONE).memory().chanceKnown(ASKED.family());
    }

    static Stream<SimulatedLearnerKind> kinds() {
        return SimulatedLearnerKind.all().stream();
    }

    /** On a few months of each kind of children: each forecast is the one the program had before the answer. */
    @ParameterizedTest
    @MethodSource("kinds")
    void theRecordIsWhatTheProgramForetoldBeforeEachAnswer(SimulatedLearnerKind kind) {
        List<Answer> log = new ArrayList<>();
        new SchoolYear(kind.create(3), new LastingGain(), 3, log::add).run(4);
        int[] counts = new int[10];
        double[] said = new double[10];
        Progress before = Progress.blank(Steering.NONE);
        Memory.Fold truth = Memory.blank(Parameters.usual()).fold();
        MotorTime motor = MotorTime.unknown();
        for (Answer answer : log) {
            if (answer.question().isPresent() && truth.cameTrue(answer, motor).isPresent()) {
                int trace = answer.question().orElseThrow().traceIndex();
                double chance =
                        before.memory().chanceQuick(trace, answer.askedAt().toEpochMilli());
                counts[Math.min(9, (int) (chance * 10))]++;
                said[Math.min(9, (int) (chance * 10))] += chance;
            }
            truth.take(answer, motor);
            motor = motor.after(answer);
            before = before.after(answer);
        }
        ForecastRecord record = ForecastRecord.of(Steering.NONE, log);
        for (int i = 0; i < 10; i++) {
            Tenth tenth = record.tenths().get(i);
            assertEquals(counts[i], tenth.answers(), kind.name() + " " + i);
            if (tenth.answers() > 0) {
                assertEquals(said[i] / counts[i], tenth.forecast(), 1e-9, kind.name() + " " + i);
                assertTrue(tenth.forecast() >= i / 10.0 && tenth.forecast() <= (i + 1) / 10.0, () -> tenth.toString());
                assertTrue(tenth.came() >= 0 && tenth.came() <= 1, () -> tenth.toString());
            }
        }
        assertTrue(record.logLoss() > 0 && record.logLossOfMean() > 0, () -> record.toString());
    }
}
