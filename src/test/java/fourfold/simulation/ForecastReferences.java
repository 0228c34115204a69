// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.facts.Trace;

/**
 * What three simple rules foretell of "right within the limit": the child's running mean, the share of the trace's last
 * five answers, and a half-life rule, p = 2^(−Δ/h), whose half-life grows with answers that hit and shrinks with those
 * that did not (after Settles and Meeder 2016, Proc. 54th ACL, 1848–1858; its weights are our own, tried by hand on other
 * children).
 */
final class ForecastReferences {
    private double mean = 0.5;
    private double meanCount = 2;
    private final boolean[][] last = new boolean[Trace.COUNT][5];
    private final int[] hits = new int[Trace.COUNT];
    private final int[] asked = new int[Trace.COUNT];
    private final long[] at = new long[Trace.COUNT];

    double runningMean() {
        return mean;
    }

    double lastFive(int trace) {
        int kept = Math.min(5, asked[trace]);
        int right = 0;
        for (int i = 0; i < kept; i++) {
            right += last[trace][i] ? 1 : 0;
        }
        return (right + 1.0) / (kept + 2.0);
    }

    /** By the half-life rule, at milliseconds since 1970. */
    double halfLife(int trace, long now) {
        double halfLife =
                Math.pow(2, -1 + 1.5 * Math.sqrt(1.0 + hits[trace]) - Math.sqrt(1.0 + asked[trace] - hits[trace]));
        double days = (now - at[trace]) / 86_400_000.0;
        return asked[trace] == 0 ? 0.5 : Math.max(0.02, Math.min(0.98, Math.pow(2, -days / halfLife)));
    }

    /** Whether the trace was asked from memory. */
    boolean wasAsked(int trace) {
        return asked[trace] > 0;
    }

    /** Takes the outcome of one answer. */
    void note(int trace, long now, boolean hit) {
        meanCount = Math.min(200, meanCount + 1);
        mean += ((hit ? 1 : 0) - mean) / meanCount;
        last[trace][asked[trace] % 5] = hit;
        hits[trace] += hit ? 1 : 0;
        asked[trace]++;
        at[trace] = now;
    }
}
