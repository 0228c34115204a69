// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import java.util.Arrays;

/** The latest copies of numbers with one digit count on one surface, and their medians. Times are in milliseconds. Immutable. */
final class CopyTimes {
    /** Copies kept; more would follow growing hands too slowly. Our own choice. */
    static final int KEPT = 20;

    /** Copies needed before their median is believed. Our own choice, from the project's plan. */
    static final int ENOUGH = 5;

    /** Copies older than this, seen from the newest, no longer count once five newer ones exist. Our own choice. */
    static final long FRESH_MILLIS = 8L * 7 * 86_400_000;

    static final CopyTimes NONE = new CopyTimes(new long[0], new int[0], new int[0]);

    /** When each copy was shown, milliseconds since 1970, oldest first. */
    private final long[] askedAt;

    private final int[] firstKeys;
    private final int[] wholes;

    // Worked out when they are first asked for; whoever comes twice finds the same.
    private double firstKey = Double.NaN;
    private double whole = Double.NaN;

    private CopyTimes(long[] askedAt, int[] firstKeys, int[] wholes) {
        this.askedAt = askedAt;
        this.firstKeys = firstKeys;
        this.wholes = wholes;
    }

    /** Whether there are enough copies to believe the medians. */
    boolean isKnown() {
        return askedAt.length >= ENOUGH;
    }

    /** With one more copy. */
    CopyTimes with(long at, int copyFirstKey, int copyWhole) {
        int from = Math.max(0, askedAt.length + 1 - KEPT);
        while (askedAt.length - from >= ENOUGH && at - askedAt[from] > FRESH_MILLIS) {
            from++;
        }
        long[] times = appended(askedAt, from, at);
        int[] firsts = appended(firstKeys, from, copyFirstKey);
        int[] ends = appended(wholes, from, copyWhole);
        return new CopyTimes(times, firsts, ends);
    }

    /** The median of the first keys in force; there must be one. */
    double firstKey() {
        if (Double.isNaN(firstKey)) {
            firstKey = Median.of(firstKeys);
        }
        return firstKey;
    }

    /** The median of the whole times in force; there must be one. */
    double whole() {
        if (Double.isNaN(whole)) {
            whole = Median.of(wholes);
        }
        return whole;
    }

    private static long[] appended(long[] kept, int from, long last) {
        long[] longer = Arrays.copyOfRange(kept, from, kept.length + 1);
        longer[longer.length - 1] = last;
        return longer;
    }

    private static int[] appended(int[] kept, int from, int last) {
        int[] longer = Arrays.copyOfRange(kept, from, kept.length + 1);
        longer[longer.length - 1] = last;
        return longer;
    }
}
