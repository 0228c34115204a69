// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

import java.util.Arrays;

/** The median: half of some numbers lie below it, half above. */
public final class Median {
    private Median() {}

    /**
     * The median of one or more numbers: the middle one, or halfway between the middle two.
     *
     * @param numbers in any order; left as they are
     */
    public static double of(double[] numbers) {
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /** The index, from 0, of the lower median among {@code count} sorted numbers: one of them, never between two. */
    public static int lowerPlace(int count) {
        return (count - 1) / 2;
    }
}
