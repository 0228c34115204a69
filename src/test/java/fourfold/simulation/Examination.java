// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.outlook.Learner;
import fourfold.outlook.Reply;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * One child examined without any policy: a year of lessons, the tables check, and then {@value #ROUNDS} weeks in which
 * each of the 200 questions is asked once a week on a fixed list, a quarter of them a day, a wrong answer being shown.
 * Times are taken in the last {@value #MEASURED} weeks from right answers within six seconds.
 */
final class Examination implements Learner {
    static final int ROUNDS = 8;
    static final int MEASURED = 4;
    private static final Duration CHECKED = Duration.ofMillis(5500);
    private static final double LONGEST = 6;

    private final SimulatedLearner child;
    private final Tally tally;
    private final double check;
    private boolean measuring;

    /** What was seen of one child: ln seconds and right answers by question, wrong answers by what they are. */
    static final class Tally {
        final double[][] sum = new double[101][11];
        final double[][] squares = new double[101][11];
        final int[][] timed = new int[101][11];
        final double[][] quotientSum = new double[11][11];
        final int[][] quotients = new int[11][11];
        final boolean[][][] right = new boolean[11][11][MEASURED];
        int operandRelated;
        int otherTable;
        int noTable;
        double digits;
        double seconds;
        int asked;
        int rights;
    }

    private Examination(SimulatedLearner child, long seed, Calendar calendar) {
        this.child = child;
        this.tally = new Tally();
        for (Lesson lesson : calendar.lessons()) {
            lesson.teach(this);
        }
        Instant end =
                SchoolYear.START.plus(Duration.ofDays(7L * calendar.weeks() + 1).plusHours(9));
        check = check(end);
        for (int round = 0; round < ROUNDS; round++) {
            measuring = round >= ROUNDS - MEASURED;
            round(round, end.plus(Duration.ofDays(7L * round + 1)), new Random(seed * 31 + round));
        }
    }

    static Examination of(SimulatedLearnerKind kind, long seed) {
        return new Examination(kind.create(seed), seed, HomeCalendar.fourDays(seed));
    }

    Tally tally() {
        return tally;
    }

    /** Of 25 products of the tables 2 to 10, each as likely as the other, how many are right within six seconds. */
    double check() {
        return check;
    }

    /** The first key within 5.5 s leaves half a second for the second digit. */
    private double check(Instant at) {
        double sum = 0;
        for (int a = 2; a <= 10; a++) {
            for (int b = 2; b <= 10; b++) {
                sum += child.chanceRightWithin(Question.product(a, b), at, CHECKED);
            }
        }
        return 25 * sum / 81;
    }

    private void round(int round, Instant first, Random dice) {
        List<Question> all = new ArrayList<>(Families.questions());
        Collections.shuffle(all, dice);
        Instant now = first;
        for (int i = 0; i < all.size(); i++) {
            if (i % 50 == 0) {
                now = first.plus(Duration.ofDays(i / 50));
            }
            Question question = all.get(i);
            Reply reply = reply(question, now);
            now = now.plus(reply.whole()).plusSeconds(2);
            boolean hit = isRight(question, reply);
            if (!hit) {
                shown(question.fact(), now);
                now = now.plusSeconds(3);
            }
            if (measuring) {
                measure(question, reply, hit, round - ROUNDS + MEASURED);
            }
        }
    }

    private static boolean isRight(Question question, Reply reply) {
        return reply.typed().equals(Integer.toString(question.expected()));
    }

    private void measure(Question question, Reply reply, boolean hit, int round) {
        tally.asked++;
        tally.rights += hit ? 1 : 0;
        tally.digits += hit ? reply.typed().length() : 0;
        tally.seconds += reply.whole().toMillis() / 1000.0;
        double seconds = reply.firstKey().toMillis() / 1000.0;
        boolean times = question.operation() == Operation.MULTIPLY;
        if (times) {
            tally.right[question.left()][question.right()][round] = hit;
        }
        if (!hit || seconds > LONGEST) {
            return;
        }
        double ln = Math.log(seconds);
        if (times) {
            tally.sum[question.left()][question.right()] += ln;
            tally.squares[question.left()][question.right()] += ln * ln;
            tally.timed[question.left()][question.right()]++;
        } else {
            Family family = question.family();
            tally.quotientSum[family.low()][family.high()] += ln;
            tally.quotients[family.low()][family.high()]++;
        }
    }

    @Override
    public Reply reply(Question question, Instant askedAt) {
        Reply reply = child.reply(question, askedAt);
        if (!reply.typed().isEmpty() && !isRight(question, reply) && question.operation() == Operation.MULTIPLY) {
            sort(question.left(), question.right(), Integer.parseInt(reply.typed()));
        }
        return reply;
    }

    /** As Campbell and Graham sorted them, among the products of 2 to 9. */
    private void sort(int a, int b, int wrong) {
        if (a < 2 || b < 2 || a > 9 || b > 9) {
            return;
        }
        boolean related = isMultiple(wrong, a, 1, 10) || isMultiple(wrong, b, 1, 10);
        boolean table = false;
        for (int n = 2; n <= 9; n++) {
            table |= isMultiple(wrong, n, 2, 9);
        }
        tally.operandRelated += related ? 1 : 0;
        tally.otherTable += !related && table ? 1 : 0;
        tally.noTable += !related && !table ? 1 : 0;
    }

    private static boolean isMultiple(int number, int of, int least, int most) {
        return number % of == 0 && number / of >= least && number / of <= most;
    }

    @Override
    public void shown(Fact fact, Instant at) {
        child.shown(fact, at);
    }
}
