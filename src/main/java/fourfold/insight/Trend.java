// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.memory.Median;
import java.util.Arrays;
import java.util.Optional;

/**
 * How something grows, drawn through points of which some may lie far off: the median of the slopes of all pairs (Theil
 * 1950; Sen 1968, Journal of the American Statistical Association 63, 1379–1389), with Sen's interval from the
 * distribution of Kendall's score, ties left aside.
 *
 * @param slope growth for one step of x
 * @param interval the 95 % interval of the slope
 * @param level the height of the line at x = 0
 * @param points how many points there are, 2 or more
 */
public record Trend(double slope, Interval interval, double level, int points) {
    /**
     * A range of slopes.
     *
     * @param low its lower end
     * @param high its upper end
     */
    public record Interval(double low, double high) {}

    /** The normal deviate for 95 %. */
    private static final double Z = 1.959964;

    /** At most this many of the newest points are looked at: pairs grow with the square. */
    private static final int MOST_POINTS = 400;

    /**
     * The trend through some points.
     *
     * @param x where, rising
     * @param y how much, as many as {@code x}
     * @return empty if fewer than two points differ in x
     */
    public static Optional<Trend> through(double[] x, double[] y) {
        int from = Math.max(0, x.length - MOST_POINTS);
        int n = x.length - from;
        double[] slopes = new double[n * (n - 1) / 2];
        int count = 0;
        for (int i = from; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[j] != x[i]) {
                    slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        if (count == 0) {
            return Optional.empty();
        }
        double[] sorted = Arrays.copyOf(slopes, count);
        Arrays.sort(sorted);
        double slope = Median.of(sorted);
        double[] levels = new double[n];
        for (int i = 0; i < n; i++) {
            levels[i] = y[from + i] - slope * x[from + i];
        }
        double spread = Z * Math.sqrt(n * (n - 1.0) * (2.0 * n + 5) / 18);
        // Counted from 0, and both ends rounded outwards, so that what falls is the mirror of what rises.
        int low = (int) Math.floor((count - spread) / 2) - 1;
        int high = (int) Math.ceil((count + spread) / 2);
        Interval interval = new Interval(sorted[Math.max(0, low)], sorted[Math.min(count - 1, high)]);
        return Optional.of(new Trend(slope, interval, Median.of(levels), n));
    }
}
