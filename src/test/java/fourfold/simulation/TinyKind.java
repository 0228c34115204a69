// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.outlook.Reply;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The smallest kind of children there can be, with a calendar of its own: three weeks, two drills a week, no lessons. A
 * child knows what it met four times, forgets nothing and throws no dice. For tests; on no list of kinds.
 */
public final class TinyKind implements SimulatedLearnerKind {
    @Override
    public String name() {
        return "tiny";
    }

    @Override
    public SimulatedLearner create(long seed) {
        int[] met = new int[Trace.COUNT];
        return new SimulatedLearner() {
            @Override
            public double chanceRightWithin(Question question, Instant at, Duration limit) {
                return met[question.traceIndex()] >= 4 ? 1 : 0;
            }

            @Override
            public Reply reply(Question question, Instant askedAt) {
                boolean knows = met[question.traceIndex()]++ >= 4;
                Duration thought = Duration.ofMillis(knows ? 1_500 : 5_000);
                String typed = Integer.toString(question.expected() + (knows || question.left() % 2 == 0 ? 0 : 1));
                return new Reply(typed, thought, thought.plusMillis(700));
            }

            @Override
            public void shown(Fact fact, Instant at) {
                met[fact.question().traceIndex()]++;
            }
        };
    }

    @Override
    public Calendar calendar(long seed) {
        return new Calendar() {
            @Override
            public int weeks() {
                return 3;
            }

            @Override
            public List<Instant> drills() {
                return IntStream.of(1, 4, 8, 11, 15, 18)
                        .mapToObj(day ->
                                SchoolYear.START.plus(Duration.ofDays(day)).plusSeconds(3_600 * 16))
                        .toList();
            }

            @Override
            public List<Lesson> lessons() {
                return List.of();
            }
        };
    }
}
