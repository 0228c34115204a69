// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.util.Arrays;

/** Measured times of one thing, in nanoseconds. */
final class Times {
    private long[] nanos = new long[64];
    private int count;

    void add(long measured) {
        if (count == nanos.length) {
            nanos = Arrays.copyOf(nanos, 2 * count);
        }
        nanos[count++] = measured;
    }

    int count() {
        return count;
    }

    long at(int index) {
        return nanos[index];
    }

    /** The smallest time that at least this share of all times does not exceed, in milliseconds; 0 if there are no times. */
    double quantile(double share) {
        if (count == 0) {
            return 0;
        }
        long[] sorted = Arrays.copyOf(nanos, count);
        Arrays.sort(sorted);
        int index = (int) Math.ceil(share * count) - 1;
        return sorted[Math.max(0, Math.min(count - 1, index))] / 1e6;
    }

    double median() {
        return quantile(0.5);
    }

    double p99() {
        return quantile(0.99);
    }

    double most() {
        return quantile(1);
    }

    /** The times from one place to before another. */
    Times part(int from, int to) {
        Times part = new Times();
        for (int i = from; i < to; i++) {
            part.add(nanos[i]);
        }
        return part;
    }
}
