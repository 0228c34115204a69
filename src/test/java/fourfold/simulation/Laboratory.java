// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Question;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * The laboratory's procedure with children who never met the facts: a few facts are shown, asked twice, asked twice more
 * after a gap, and tested after the retention interval (Cepeda and others 2008, 2009). What is wrong is shown.
 */
final class Laboratory {
    private static final int CHILDREN = 120;
    private static final List<Question> FACTS =
            List.of(Question.product(3, 7), Question.product(4, 9), Question.product(6, 8));
    private static final Instant BEGIN = SchoolYear.START.plus(Duration.ofHours(9));
    private static final Duration LEAST_GAP = Duration.ofMinutes(3);

    private final MemoryKind kind;

    Laboratory(MemoryKind kind) {
        this.kind = kind;
    }

    /** Share recalled after the retention interval when the second session came after the gap, 0 to 1. */
    double afterGap(int gapDays, int retentionDays) {
        double sum = 0;
        for (long seed = 1; seed <= CHILDREN; seed++) {
            SimulatedChild child = kind.blank(seed);
            Instant first = learn(child);
            Instant second = first.plus(gapDays == 0 ? LEAST_GAP : Duration.ofDays(gapDays));
            ask(child, second);
            Instant end = second.plusSeconds(120);
            ask(child, end);
            sum += tested(child, end.plus(Duration.ofDays(retentionDays)));
        }
        return sum / CHILDREN;
    }

    /** Share recalled so many days after the only session, 0 to 1. */
    double afterDays(int days) {
        double sum = 0;
        for (long seed = 1; seed <= CHILDREN; seed++) {
            SimulatedChild child = kind.blank(seed);
            sum += tested(child, learn(child).plus(Duration.ofDays(days)));
        }
        return sum / CHILDREN;
    }

    private static Instant learn(SimulatedChild child) {
        for (int i = 0; i < FACTS.size(); i++) {
            child.shown(FACTS.get(i).fact(), BEGIN.plusSeconds(5L * i));
        }
        ask(child, BEGIN.plusSeconds(60));
        ask(child, BEGIN.plusSeconds(120));
        return BEGIN.plusSeconds(120);
    }

    private static void ask(SimulatedChild child, Instant at) {
        for (int i = 0; i < FACTS.size(); i++) {
            Question question = FACTS.get(i);
            Instant now = at.plusSeconds(15L * i);
            if (!child.reply(question, now).typed().equals(Integer.toString(question.expected()))) {
                child.shown(question.fact(), now.plusSeconds(10));
            }
        }
    }

    private static double tested(SimulatedChild child, Instant at) {
        return FACTS.stream().mapToDouble(q -> child.chanceRecalled(q, at)).sum() / FACTS.size();
    }
}
