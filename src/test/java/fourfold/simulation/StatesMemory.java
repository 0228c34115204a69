// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * A fact is unknown, fresh, settled or lasting (Markov models of learning: Atkinson and Crothers 1964, Journal of
 * Mathematical Psychology 1, 285–315; from memory, the states between are ours). The memory holds the chances of the states.
 * Practice makes an unknown fact fresh, does nothing to a fresh one, and makes a settled one lasting, each with some
 * chance; time makes fresh facts settled or unknown, lasting ones settled, settled ones unknown.
 */
final class StatesMemory implements TraceMemory {
    private static final double LEAST = 0.0025;

    private final Numbers numbers;
    private double fresh;
    private double settled;
    private double lasting;
    private double last;

    /**
     * One trace's numbers.
     *
     * @param learn chance that practice makes an unknown fact fresh
     * @param settle chance that a fresh fact becomes settled and is not lost
     * @param deepen chance that practice makes a settled fact lasting
     * @param freshDays after which 37 percent of fresh facts are still fresh
     * @param settledDays the same of settled facts
     * @param lastingDays the same of lasting facts
     */
    record Numbers(
            double learn, double settle, double deepen, double freshDays, double settledDays, double lastingDays) {}

    StatesMemory(Numbers numbers) {
        this.numbers = numbers;
    }

    private static double left(double seconds, double days) {
        return Math.exp(-seconds / (days * 86_400));
    }

    /** Of what was in a state, the part that is in the next one after the time, both being left at their own pace. */
    private static double passed(double seconds, double days, double nextDays) {
        double rate = 1 / days;
        double next = 1 / nextDays;
        return rate / (rate - next) * (left(seconds, nextDays) - left(seconds, days));
    }

    private double settledAt(double gone) {
        return settled * left(gone, numbers.settledDays)
                + fresh * numbers.settle * passed(gone, numbers.freshDays, numbers.settledDays)
                + lasting * passed(gone, numbers.lastingDays, numbers.settledDays);
    }

    @Override
    public double strength(double at) {
        double gone = Math.max(0, at - last);
        double known =
                fresh * left(gone, numbers.freshDays) + settledAt(gone) + lasting * left(gone, numbers.lastingDays);
        double p = Math.max(LEAST, Math.min(0.995, known));
        return Math.max(NOTHING, Math.log(p / (1 - p)));
    }

    @Override
    public void practised(double at, How how) {
        double gone = Math.max(0, at - last);
        double settledNow = settledAt(gone);
        double freshNow = fresh * left(gone, numbers.freshDays);
        double lastingNow = lasting * left(gone, numbers.lastingDays);
        double unknown = Math.max(0, 1 - settledNow - freshNow - lastingNow);
        double part = how == How.RECALLED ? 1 : 0.7;
        fresh = freshNow + unknown * numbers.learn * part;
        settled = settledNow * (1 - numbers.deepen * part);
        lasting = lastingNow + settledNow * numbers.deepen * part;
        last = at;
    }

    @Override
    public TraceMemory copy() {
        StatesMemory copy = new StatesMemory(numbers);
        copy.fresh = fresh;
        copy.settled = settled;
        copy.lasting = lasting;
        copy.last = last;
        return copy;
    }
}
