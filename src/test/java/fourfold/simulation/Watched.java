// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.outlook.Reply;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** A child with somebody beside it who counts how many questions of its drills it needed. */
final class Watched implements SimulatedLearner {
    private static final Duration LASTING = Duration.ofDays(14);
    private static final Duration LONG_WEEKEND = Duration.ofDays(3);
    private static final Duration DRILL = Duration.ofHours(1);

    private final SimulatedLearner child;
    private final List<Instant> drills;
    private final boolean[] owing = new boolean[Families.COUNT];
    private int begun;
    private int asked;
    private int owed;
    private int firm;
    private int firmOwed;
    private int lasting;
    private int lastingOwed;

    Watched(SimulatedLearner child, List<Instant> drills) {
        this.child = child;
        this.drills = drills;
    }

    int asked() {
        return asked;
    }

    /** Questions that were inverses owed to a product. */
    int owed() {
        return owed;
    }

    /** Questions to what would have been fluent at the next drill without them. */
    int firm() {
        return firm;
    }

    int firmOwed() {
        return firmOwed;
    }

    /** Questions to what would have been fluent at the next drill and after 14 days without them. */
    int lasting() {
        return lasting;
    }

    int lastingOwed() {
        return lastingOwed;
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        while (begun < drills.size() && !drills.get(begun).isAfter(askedAt)) {
            begun++;
            java.util.Arrays.fill(owing, false);
        }
        boolean inDrill =
                begun > 0 && Duration.between(drills.get(begun - 1), askedAt).compareTo(DRILL) < 0;
        if (inDrill) {
            count(question, askedAt);
        }
        return child.reply(question, askedAt);
    }

    private void count(Question question, Instant askedAt) {
        asked++;
        int family = question.family().index();
        boolean inverse = question.operation() == Operation.DIVIDE && owing[family];
        owing[family] = question.operation() == Operation.MULTIPLY;
        owed += inverse ? 1 : 0;
        Instant next = begun < drills.size() ? drills.get(begun) : askedAt.plus(LONG_WEEKEND);
        if (Year.isFluent(child, question, next)) {
            firm++;
            firmOwed += inverse ? 1 : 0;
            if (Year.isFluent(child, question, askedAt.plus(LASTING))) {
                lasting++;
                lastingOwed += inverse ? 1 : 0;
            }
        }
    }

    @Override
    public void shown(Fact fact, Instant at) {
        child.shown(fact, at);
    }

    @Override
    public double chanceRightWithin(Question question, Instant at, Duration limit) {
        return child.chanceRightWithin(question, at, limit);
    }

    @Override
    public Reply copy(String digits, Instant at) {
        return child.copy(digits, at);
    }
}
