// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.memory.Median;
import java.util.Arrays;
import java.util.Optional;

/**
 * Where the middle half of some measurements lies.
 *
 * @param low a quarter of them lies below
 * @param median half of them lies below
 * @param high three quarters lie below
 * @param count how many there are, 1 or more
 */
public record Spread(double low, double median, double high, int count) {
    /**
     * The spread of some numbers.
     *
     * @param numbers in any order; left as they are
     * @return empty if there are none
     */
    public static Optional<Spread> of(double[] numbers) {
        if (numbers.length == 0) {
            return Optional.empty();
        }
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        return Optional.of(
                new Spread(quantile(sorted, 0.25), Median.of(sorted), quantile(sorted, 0.75), sorted.length));
    }

    /**
     * The quantile that lies right in the median, whatever the distribution: definition 8 of Hyndman and Fan 1996, The
     * American Statistician 50, 361–365, which they recommend.
     *
     * @param sorted one or more numbers, rising
     * @param share 0 to 1
     */
    public static double quantile(double[] sorted, double share) {
        double place = (sorted.length + 1.0 / 3) * share + 1.0 / 3;
        int below = (int) Math.floor(place);
        if (below < 1) {
            return sorted[0];
        }
        if (below >= sorted.length) {
            return sorted[sorted.length - 1];
        }
        return sorted[below - 1] + (place - below) * (sorted[below] - sorted[below - 1]);
    }
}
