// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * The predictive performance equation (Walsh, Gluck, Gunzelmann, Jastrzembski and Krusmark 2018, Cognitive Science 42,
 * 644–691): M = N^c · T^(−d), with T the age of the presentations weighted towards the recent ones (w ∝ age^(−x)), d = b +
 * m · mean of 1/ln(lag + e). The exponent x = 0.6 is the paper's; c, b, m, threshold and noise were set by hand.
 */
final class PredictiveMemory implements TraceMemory {
    private static final double RECENCY = 0.6;

    private final Numbers numbers;
    private Presentations met = new Presentations();
    private double count;
    private double stability;
    private int lags;

    /** The growth c, the base decay b, the spacing term m, the threshold and the noise s of one child. */
    record Numbers(double growth, double base, double spacing, double threshold, double noise) {}

    PredictiveMemory(Numbers numbers) {
        this.numbers = numbers;
    }

    @Override
    public double strength(double at) {
        if (met.size() == 0) {
            return NOTHING;
        }
        double weights = 0;
        double ages = 0;
        for (int i = 0; i < met.size(); i++) {
            double age = Math.max(1, at - met.time(i));
            double w = met.weight(i) * Math.exp(-RECENCY * Math.log(age));
            weights += w;
            ages += w * age;
        }
        double decay = numbers.base + (lags == 0 ? 0 : numbers.spacing * stability / lags);
        double m = Math.exp(numbers.growth * Math.log(count) - decay * Math.log(ages / weights));
        return Math.max(NOTHING, (m - numbers.threshold) / numbers.noise);
    }

    @Override
    public void practised(double at, How how) {
        if (met.size() > 0) {
            double lag = Math.max(1, at - met.last());
            stability += 1 / Math.log(lag + Math.E);
            lags++;
        }
        count += how == How.RECALLED ? 1 : 0.8;
        met.add(at, 0, 1);
        count = Math.max(1, count);
    }

    @Override
    public TraceMemory copy() {
        PredictiveMemory copy = new PredictiveMemory(numbers);
        copy.met = met.copy();
        copy.count = count;
        copy.stability = stability;
        copy.lags = lags;
        return copy;
    }
}
