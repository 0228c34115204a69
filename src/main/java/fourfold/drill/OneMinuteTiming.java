// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A one-minute timing: as many accurate facts of one operation as come in a minute of answering. One-minute trials are
 * an old classroom routine (Miller and Heward 1992, Intervention in School and Clinic 28, 98–104); they are taken only
 * where the parent has switched them on and only on facts that are accurate. Products and quotients take turns from day to
 * day, since their answers differ in length and their rates cannot be compared.
 */
final class OneMinuteTiming {
    /** How much time of answering it takes. */
    static final Duration LENGTH = Duration.ofMinutes(1);

    /** With fewer facts the same ones would come again and again (our own choice). */
    static final int FEWEST = 10;

    /** More than anybody answers in a minute. */
    private static final int PLENTY = 120;

    private OneMinuteTiming() {}

    /** The questions of a timing in this drill; empty if none is to be taken. */
    static List<Question> questions(Progress progress, Instant at, long seed) {
        if (!progress.steering().settings().timings()) {
            return List.of();
        }
        Operation first = progress.localDay(at) % 2 == 0 ? Operation.MULTIPLY : Operation.DIVIDE;
        List<Question> accurate = accurate(progress, first);
        return accurate.isEmpty() ? shuffled(accurate(progress, first.inverse()), seed) : shuffled(accurate, seed);
    }

    private static List<Question> accurate(Progress progress, Operation operation) {
        List<Question> questions = new ArrayList<>();
        for (Trace trace : Families.traces()) {
            if (trace.operation() == operation
                    && progress.mastery(trace).level().atLeast(Mastery.ACCURATE)
                    && (operation == Operation.MULTIPLY || progress.hasSign(trace))
                    && !progress.isHeld(trace.family())
                    && !progress.isBeforeItsDate(trace.family())) {
                questions.addAll(trace.questions());
            }
        }
        long families = questions.stream().map(Question::family).distinct().count();
        return families < FEWEST ? List.of() : questions;
    }

    /** In a mixed order, again from the start when all are through; no product twice in a row. */
    private static List<Question> shuffled(List<Question> from, long seed) {
        SplittableRandom dice = new SplittableRandom(seed ^ 0x74696d65L);
        List<Question> order = new ArrayList<>();
        List<Question> left = new ArrayList<>();
        while (!from.isEmpty() && order.size() < PLENTY) {
            if (left.isEmpty()) {
                left.addAll(from);
            }
            int product =
                    order.isEmpty() ? 0 : order.get(order.size() - 1).family().product();
            List<Question> fitting =
                    left.stream().filter(q -> q.family().product() != product).toList();
            if (fitting.isEmpty()) {
                left.clear();
                continue;
            }
            Question next = fitting.get(dice.nextInt(fitting.size()));
            left.remove(next);
            order.add(next);
        }
        return List.copyOf(order);
    }

    /** Whether the drill's timed answers have taken their minute. */
    static boolean isOver(DrillSoFar drill) {
        Duration taken = Duration.ZERO;
        for (Answer answer : drill.newestFirst()) {
            if (answer.purpose() == Purpose.TIMED) {
                taken = taken.plus(answer.whole().orElse(Duration.ZERO));
            }
        }
        return taken.compareTo(LENGTH) >= 0;
    }

    /** The timed answers of a drill, if it had any. */
    static Optional<List<Answer>> answers(DrillSoFar drill) {
        List<Answer> timed = drill.answers().stream()
                .filter(a -> a.purpose() == Purpose.TIMED)
                .toList();
        return timed.isEmpty() ? Optional.empty() : Optional.of(timed);
    }
}
