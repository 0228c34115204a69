// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * The multiscale context model (Mozer, Pashler, Cepeda, Lindsey and Vul 2009, NIPS 22, 1321–1329): leaky pools from
 * minutes to most of a year, each strengthened by what the quicker pools before it do not explain yet. Five pools instead
 * of a hundred.
 */
final class MultiscaleMemory implements TraceMemory {
    private static final int POOLS = 5;
    private static final double QUICKEST = 1570;
    private static final double SLOWEST = 370 * 86_400.0;

    private final Numbers numbers;
    private final double[] timescales;
    private double[] pools;
    private double last;
    private boolean met;

    /** Steps after a failure and after a success, the share γ of a pool over the one before, threshold and noise. */
    record Numbers(double afterFailure, double afterSuccess, double share, double threshold, double noise) {}

    MultiscaleMemory(Numbers numbers) {
        this(numbers, TIMESCALES);
    }

    /** With pools that fade by a factor e in so many seconds each, the quickest first. */
    MultiscaleMemory(Numbers numbers, double[] timescales) {
        this.numbers = numbers;
        this.timescales = timescales;
        this.pools = new double[timescales.length];
    }

    private static double timescale(int i) {
        return QUICKEST * Math.pow(SLOWEST / QUICKEST, i / (POOLS - 1.0));
    }

    private static final double[] TIMESCALES = timescales();

    private static double[] timescales() {
        double[] all = new double[POOLS];
        for (int i = 0; i < POOLS; i++) {
            all[i] = timescale(i);
        }
        return all;
    }

    private double level(int pool, double at) {
        return pools[pool] * Math.exp(-(at - last) / timescales[pool]);
    }

    @Override
    public double strength(double at) {
        if (!met) {
            return NOTHING;
        }
        double sum = 0;
        double shares = 0;
        double share = 1;
        for (int i = 0; i < pools.length; i++) {
            sum += share * level(i, at);
            shares += share;
            share *= numbers.share;
        }
        return Math.max(NOTHING, (sum / shares - numbers.threshold) / numbers.noise);
    }

    @Override
    public void practised(double at, How how) {
        last = met ? last : at;
        double step = how == How.RECALLED ? numbers.afterSuccess : numbers.afterFailure;
        double sum = 0;
        double shares = 0;
        double share = 1;
        for (int i = 0; i < pools.length; i++) {
            double level = level(i, at);
            sum += share * level;
            shares += share;
            share *= numbers.share;
            pools[i] = level + step * Math.max(0, 1 - sum / shares);
        }
        last = at;
        met = true;
    }

    @Override
    public TraceMemory copy() {
        MultiscaleMemory copy = new MultiscaleMemory(numbers, timescales);
        copy.pools = pools.clone();
        copy.last = last;
        copy.met = met;
        return copy;
    }
}
