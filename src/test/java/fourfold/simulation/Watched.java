package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Question;
import fourfold.outlook.Reply;
import java.time.Duration;
import java.time.Instant;

/** A child with somebody counting beside it. */
final class Watched implements SimulatedLearner {
    private static final Duration LASTING = Duration.ofDays(14);

    private final SimulatedLearner child;
    private int asked;
    private int right;
    private int lasting;

    Watched(SimulatedLearner child) {
        this.child = child;
    }

    int asked() {
        return asked;
    }

    double success() {
        return asked == 0 ? 0 : (double) right / asked;
    }

    double onLasting() {
        return asked == 0 ? 0 : (double) lasting / asked;
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        asked++;
        boolean needless = Year.isFluent(child.chanceRightWithin(question, askedAt.plus(LASTING), Year.LIMIT));
        lasting += needless ? 1 : 0;
        Reply reply = child.reply(question, askedAt);
        right += reply.typed().equals(Integer.toString(question.expected())) ? 1 : 0;
        return reply;
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
