// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * A race of remembered instances against counting (Logan 1988, Psychological Review 95, 492–527; from memory): every
 * practice lays down one more instance, all of them race with Weibull times, and the answer is recalled if the quickest
 * is quicker than the way by counting. With n instances at hand the chance is 1 − e^(−θn), and the winner's time falls
 * with a power of n.
 *
 * <p>The theory has no forgetting. Here an instance is still at hand with the chance (1 + age/σ)^(−d), and σ is the larger
 * the longer the pause before it, if the earlier instances were still found then (study-phase retrieval: Benjamin and
 * Tullis 2010, Cognitive Psychology 61, 228–247; the form is our own).
 */
final class InstanceMemory implements TraceMemory {
    private static final double COUNTING = 3.2;
    private static final double SHAPE = 3;

    private final Numbers numbers;
    private Presentations laid = new Presentations();

    /**
     * One child's numbers.
     *
     * @param rate θ, what one instance adds to the hazard
     * @param fading d, the exponent with which instances are lost
     * @param first σ in seconds of an instance with no pause before it
     * @param share how much of the pause before it is added to σ
     * @param seen what an instance is worth whose answer was not recalled
     */
    record Numbers(double rate, double fading, double first, double share, double seen) {}

    InstanceMemory(Numbers numbers) {
        this.numbers = numbers;
    }

    @Override
    public double strength(double at) {
        double hazard = numbers.rate * atHand(at);
        return hazard < 1e-3 ? NOTHING : Math.max(NOTHING, Math.log(Math.expm1(hazard)));
    }

    private double atHand(double at) {
        double sum = 0;
        for (int i = 0; i < laid.size(); i++) {
            double age = Math.max(0, at - laid.time(i));
            sum += laid.weight(i) * Math.exp(-numbers.fading * Math.log(1 + age / laid.decay(i)));
        }
        return sum;
    }

    @Override
    public void practised(double at, How how) {
        double lasting = numbers.first;
        if (laid.size() > 0) {
            double found = 1 - Math.exp(-numbers.rate * atHand(at));
            lasting += numbers.share * found * Math.max(0, at - laid.last());
        }
        laid.add(at, lasting, how == How.RECALLED ? 1 : numbers.seen);
    }

    /** The median of the winner's time, given that it beats the counting. */
    @Override
    public double thinking(double strength) {
        double hazard = Math.log1p(Math.exp(Math.min(30, strength)));
        double middle = -Math.log1p(Math.expm1(-hazard) / 2);
        return COUNTING * Math.pow(middle / hazard, 1 / SHAPE);
    }

    @Override
    public TraceMemory copy() {
        InstanceMemory copy = new InstanceMemory(numbers);
        copy.laid = laid.copy();
        return copy;
    }
}
