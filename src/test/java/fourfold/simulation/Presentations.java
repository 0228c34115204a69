// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.Arrays;

/**
 * The moments at which a trace was met, each with its weight and its own decay. Moments close together, seen from far
 * away, are merged: never more than {@value #MOST} are kept.
 */
final class Presentations {
    private static final int MOST = 24;

    private double[] times = new double[4];
    private double[] weights = new double[4];
    private double[] decays = new double[4];
    private int size;

    int size() {
        return size;
    }

    double time(int i) {
        return times[i];
    }

    double weight(int i) {
        return weights[i];
    }

    double decay(int i) {
        return decays[i];
    }

    double last() {
        return times[size - 1];
    }

    void add(double time, double decay, double weight) {
        if (size == MOST) {
            merge(oldestPair(time));
        }
        if (size == times.length) {
            times = Arrays.copyOf(times, 2 * size);
            weights = Arrays.copyOf(weights, 2 * size);
            decays = Arrays.copyOf(decays, 2 * size);
        }
        times[size] = time;
        decays[size] = decay;
        weights[size++] = weight;
    }

    /** The neighbours that are closest together for their age. */
    private int oldestPair(double now) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < size; i++) {
            double closeness = (times[i + 1] - times[i]) / (now - times[i] + 1);
            if (closeness < least) {
                least = closeness;
                best = i;
            }
        }
        return best;
    }

    private void merge(int i) {
        double sum = weights[i] + weights[i + 1];
        times[i] = (times[i] * weights[i] + times[i + 1] * weights[i + 1]) / sum;
        decays[i] = (decays[i] * weights[i] + decays[i + 1] * weights[i + 1]) / sum;
        weights[i] = sum;
        int after = size - i - 2;
        System.arraycopy(times, i + 2, times, i + 1, after);
        System.arraycopy(weights, i + 2, weights, i + 1, after);
        System.arraycopy(decays, i + 2, decays, i + 1, after);
        size--;
    }

    Presentations copy() {
        Presentations copy = new Presentations();
        copy.times = times.clone();
        copy.weights = weights.clone();
        copy.decays = decays.clone();
        copy.size = size;
        return copy;
    }
}
