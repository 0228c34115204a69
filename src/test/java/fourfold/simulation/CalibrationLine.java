// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;

/**
 * The line of calibration: log odds of what comes true = intercept + slope · log odds foretold. 0 and 1 are perfect; a
 * slope under 1 means forecasts that are too sure of themselves (Cox 1958, Biometrika 45, 562–565). Fitted by maximum
 * likelihood; standard errors allow for children who differ (a sandwich over children), not a number with one child.
 */
record CalibrationLine(double intercept, double slope, double interceptError, double slopeError) {
    private static final int STEPS = 50;

    /** Of the policy's own forecasts; a list of probes for each child. */
    static CalibrationLine of(List<List<Probe>> children) {
        double a = 0;
        double b = 1;
        double[] inverse = new double[3];
        for (int step = 0; step < STEPS; step++) {
            double[] sums = new double[5];
            for (List<Probe> child : children) {
                add(child, a, b, sums);
            }
            inverse = inverse(sums[2], sums[3], sums[4]);
            double da = inverse[0] * sums[0] + inverse[1] * sums[1];
            double db = inverse[1] * sums[0] + inverse[2] * sums[1];
            a += Math.max(-1, Math.min(1, da));
            b += Math.max(-1, Math.min(1, db));
            if (Math.abs(da) + Math.abs(db) < 1e-10) {
                break;
            }
        }
        return withErrors(children, a, b, inverse);
    }

    private static CalibrationLine withErrors(List<List<Probe>> children, double a, double b, double[] inverse) {
        double aa = 0;
        double bb = 0;
        for (List<Probe> child : children) {
            double[] sums = new double[5];
            add(child, a, b, sums);
            double u = inverse[0] * sums[0] + inverse[1] * sums[1];
            double v = inverse[1] * sums[0] + inverse[2] * sums[1];
            aa += u * u;
            bb += v * v;
        }
        double n = children.size();
        double few = n < 2 ? Double.NaN : n / (n - 1);
        return new CalibrationLine(a, b, Math.sqrt(aa * few), Math.sqrt(bb * few));
    }

    /** Adds the score, two sums, and the information, three, of one child. */
    private static void add(List<Probe> child, double a, double b, double[] sums) {
        for (Probe probe : child) {
            double p = probe.chance(0);
            double x = Math.log(p / (1 - p));
            double expected = 1 / (1 + Math.exp(-a - b * x));
            double miss = probe.truth() - expected;
            double weight = expected * (1 - expected);
            sums[0] += miss;
            sums[1] += miss * x;
            sums[2] += weight;
            sums[3] += weight * x;
            sums[4] += weight * x * x;
        }
    }

    private static double[] inverse(double aa, double ab, double bb) {
        double determinant = aa * bb - ab * ab;
        return new double[] {bb / determinant, -ab / determinant, aa / determinant};
    }
}
