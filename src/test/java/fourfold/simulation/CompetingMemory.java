// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import java.util.SplittableRandom;

/**
 * Answers of neighbouring facts compete (network interference: Campbell 1995, Mathematical Cognition 1, 121–164; Verguts
 * and Fias 2005, Memory and Cognition 33, 1–16; both from memory). A question is tied to its own answer and, through the
 * neighbours one step away in a table, to theirs. The chance of each is its share of e^(weight) (Luce's choice rule). A
 * delta rule moves the right answer by its error, 1 − share; a wrong answer that was given gains too (Siegler 1988,
 * Journal of Experimental Psychology: General 117, 258–275; from memory), and is pulled down when the right one is seen.
 *
 * <p>Those models do not forget. Here weights hang on elements of the surroundings that come and go (stimulus fluctuation:
 * Estes 1955, Psychological Review 62, 369–377): three sets that change within a day, weeks and most of a year. Only
 * those present learn, so that a second lesson in the same surroundings has little left to correct.
 */
final class CompetingMemory implements TraceMemory {
    private static final double[] DAYS = {0.6, 12, 250};
    private static final int MOST_NEIGHBOURS = 4;
    private static final double ERROR_SECONDS = 15 * 86_400;

    private final Numbers numbers;
    private final CompetingMemory[] network;
    private final int[] neighbours;
    private final int[] answers;
    private final double[] present = new double[DAYS.length];
    private final double[] all = new double[DAYS.length];
    private final double[] errors = new double[MOST_NEIGHBOURS];
    private double last;
    private boolean met;

    /**
     * One child's numbers.
     *
     * @param step how far the delta rule moves the elements present
     * @param unrecalled which part of the step is taken when the answer did not come from memory
     * @param present share of the elements that are present at a time
     * @param likeness which part of a neighbour's weight speaks for the neighbour's answer here
     * @param silence the weight of not answering
     * @param sharpness what weights are multiplied by in the choice
     * @param errorStep how much a wrong answer gains when it is given
     */
    record Numbers(
            double step,
            double unrecalled,
            double present,
            double likeness,
            double silence,
            double sharpness,
            double errorStep) {}

    /**
     * The memory of one trace in a child's network.
     *
     * @param network of all traces by index; this memory puts itself in
     */
    CompetingMemory(Numbers numbers, Trace trace, CompetingMemory[] network) {
        this.numbers = numbers;
        this.network = network;
        this.neighbours = neighboursOf(trace);
        this.answers = new int[neighbours.length];
        for (int i = 0; i < neighbours.length; i++) {
            Question near = Families.traces().get(neighbours[i]).questions().get(0);
            answers[i] = near.expected();
        }
        network[trace.index()] = this;
    }

    /** A copy to look ahead; the network still holds the original. */
    private CompetingMemory(CompetingMemory from) {
        numbers = from.numbers;
        network = from.network;
        neighbours = from.neighbours;
        answers = from.answers;
        System.arraycopy(from.present, 0, present, 0, present.length);
        System.arraycopy(from.all, 0, all, 0, all.length);
        System.arraycopy(from.errors, 0, errors, 0, errors.length);
        last = from.last;
        met = from.met;
    }

    /** Products with one factor one step off; quotients by the same divisor one step off. */
    private static int[] neighboursOf(Trace trace) {
        Family f = trace.family();
        int[] found = new int[MOST_NEIGHBOURS];
        int count = 0;
        for (int step = -1; step <= 1; step += 2) {
            if (trace.operation() == Operation.DIVIDE) {
                int other = f.partnerOf(trace.divisor()) + step;
                if (other >= 1 && other <= Families.LARGEST_FACTOR) {
                    found[count++] = Trace.quotient(Family.of(trace.divisor(), other), trace.divisor())
                            .index();
                }
                continue;
            }
            if (f.low() + step >= 1 && f.low() + step <= Families.LARGEST_FACTOR) {
                found[count++] = Family.of(f.low() + step, f.high()).index();
            }
            if (!f.isSquare() && f.high() + step <= Families.LARGEST_FACTOR) {
                found[count++] = Family.of(f.low(), f.high() + step).index();
            }
        }
        return java.util.Arrays.copyOf(found, count);
    }

    private double own(double at) {
        if (!met) {
            return 0;
        }
        double sum = 0;
        double gone = Math.max(0, at - last) / 86_400;
        for (int i = 0; i < DAYS.length; i++) {
            sum += all[i] + (present[i] - all[i]) * Math.exp(-gone / DAYS[i]);
        }
        return sum;
    }

    private double error(int i, double at) {
        return errors[i] * Math.exp(-Math.max(0, at - last) / ERROR_SECONDS);
    }

    private double rival(int i, double at) {
        CompetingMemory near = network[neighbours[i]];
        double lent = near == null ? 0 : numbers.likeness * near.own(at);
        return numbers.sharpness * (lent + error(i, at));
    }

    @Override
    public double strength(double at) {
        if (!met) {
            return NOTHING;
        }
        double rivals = Math.exp(numbers.silence);
        for (int i = 0; i < neighbours.length; i++) {
            rivals += Math.exp(rival(i, at)) - 1;
        }
        return Math.max(NOTHING, numbers.sharpness * own(at) - Math.log(rivals));
    }

    @Override
    public void practised(double at, How how) {
        double step = numbers.step / (1 + Math.exp(met ? strength(at) : NOTHING));
        moveTo(at);
        for (int i = 0; i < DAYS.length; i++) {
            double moved = step * (how == How.RECALLED ? 1 : numbers.unrecalled);
            present[i] += moved;
            all[i] += numbers.present * moved;
        }
        for (int i = 0; i < neighbours.length; i++) {
            errors[i] *= how == How.SEEN ? 0.5 : 0.9;
        }
        met = true;
    }

    private void moveTo(double at) {
        double gone = met ? Math.max(0, at - last) / 86_400 : 0;
        for (int i = 0; i < DAYS.length; i++) {
            present[i] = all[i] + (present[i] - all[i]) * Math.exp(-gone / DAYS[i]);
        }
        for (int i = 0; i < neighbours.length; i++) {
            errors[i] = error(i, at);
        }
        last = at;
    }

    @Override
    public int wrongAnswer(Question question, double at, SplittableRandom dice) {
        if (dice.nextDouble() < 0.85 || neighbours.length == 0) {
            return WrongAnswers.to(question, dice);
        }
        double[] shares = new double[neighbours.length];
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            shares[i] = Math.exp(rival(i, at));
            sum += shares[i];
        }
        double point = dice.nextDouble() * sum;
        int chosen = 0;
        while (chosen < shares.length - 1 && point >= shares[chosen]) {
            point -= shares[chosen++];
        }
        return answers[chosen];
    }

    @Override
    public void missed(double at, int answer) {
        moveTo(at);
        for (int i = 0; i < neighbours.length; i++) {
            errors[i] += answers[i] == answer ? numbers.errorStep : 0;
        }
    }

    @Override
    public TraceMemory copy() {
        return new CompetingMemory(this);
    }
}
