// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import java.util.List;

/**
 * What the memory model with the program's own constants says where people were measured. The procedure is always the
 * same: three presentations a minute apart; in a second session two more, two minutes apart.
 */
public final class ModelFigures {
    private static final double[] LEARNED = {0, 60, 120};
    private static final double[] AGAIN = {0, 120};
    private static final double DAY = 86_400;
    private static final double LEAST_GAP = 180;
    private static final Parameters USUAL = Parameters.usual();

    private ModelFigures() {}

    /** Recall after a gap and a retention interval in days; the second session comes no sooner than three minutes after. */
    public static double afterGap(double gap, double retention, double threshold) {
        double[] times = new double[LEARNED.length + AGAIN.length];
        System.arraycopy(LEARNED, 0, times, 0, LEARNED.length);
        double second = LEARNED[LEARNED.length - 1] + Math.max(LEAST_GAP, gap * DAY);
        for (int i = 0; i < AGAIN.length; i++) {
            times[LEARNED.length + i] = second + AGAIN[i];
        }
        return recall(times, times[times.length - 1] + retention * DAY, threshold);
    }

    /** Recall so many days after one session, five minutes after it at the soonest. */
    public static double afterDays(double days, double threshold) {
        return recall(LEARNED, LEARNED[LEARNED.length - 1] + Math.max(300, days * DAY), threshold);
    }

    private static double recall(double[] times, double at, double threshold) {
        double[] felt = new double[times.length];
        for (int i = 1; i < times.length; i++) {
            felt[i] = felt[i - 1] + felt(times[i] - times[i - 1]);
        }
        double[] decays = PublishedEquations.decays(felt, USUAL.decayScale, USUAL.usualRate);
        double then = felt[felt.length - 1] + felt(at - times[times.length - 1]);
        double activation = PublishedEquations.activationAt(then, felt, decays, felt.length);
        return Equations.chanceOfRecall(activation, threshold, USUAL.noise);
    }

    private static double felt(double gap) {
        return Math.min(gap, USUAL.pause) + USUAL.betweenDrills * Math.max(0, gap - USUAL.pause);
    }

    /** A measured point: gap and retention interval in days, share recalled. */
    public record Spaced(double gap, double retention, double recalled) {}

    /** A measured point: days, share recalled. */
    public record Forgotten(double days, double recalled) {}

    /** Root mean squared error over the points with the threshold that fits them best: the one free value. */
    public static double errorOfSpacing(List<Spaced> points) {
        return Math.sqrt(squares(points, bestThreshold(points)) / points.size());
    }

    private static double bestThreshold(List<Spaced> points) {
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (double threshold = -3.5; threshold < 0; threshold += 0.01) {
            double error = squares(points, threshold);
            best = error < least ? threshold : best;
            least = Math.min(least, error);
        }
        return best;
    }

    private static double squares(List<Spaced> points, double threshold) {
        return points.stream()
                .mapToDouble(p -> afterGap(p.gap, p.retention, threshold) - p.recalled)
                .map(e -> e * e)
                .sum();
    }

    /** The same for forgetting after one session. */
    public static double errorOfForgetting(List<Forgotten> points) {
        double least = Double.POSITIVE_INFINITY;
        for (double threshold = -3.5; threshold < 0; threshold += 0.01) {
            double level = threshold;
            double error = points.stream()
                    .mapToDouble(p -> afterDays(p.days, level) - p.recalled)
                    .map(e -> e * e)
                    .sum();
            least = Math.min(least, error);
        }
        return Math.sqrt(least / points.size());
    }

    /** The tested gap with the highest recall at one retention interval, at the level that fits all points. */
    public static double bestGap(List<Spaced> points, double retention) {
        double threshold = bestThreshold(points);
        double best = 0;
        for (Spaced p : points) {
            if (p.retention == retention
                    && afterGap(p.gap, retention, threshold) > afterGap(best, retention, threshold)) {
                best = p.gap;
            }
        }
        return best;
    }

    /** Log odds of recall with the best gap less those with none, at the level that fits all points. */
    public static double gainOfSpacing(List<Spaced> points, double retention) {
        double threshold = bestThreshold(points);
        double best = afterGap(bestGap(points, retention), retention, threshold);
        double none = afterGap(0, retention, threshold);
        return Math.log(best / (1 - best)) - Math.log(none / (1 - none));
    }

    /** Recall on day 28 as a part of that on day 1, at the level that fits the points. */
    public static double keptToDay28(List<Spaced> points) {
        double threshold = bestThreshold(points);
        return afterDays(28, threshold) / afterDays(1, threshold);
    }

    /**
     * Recall in blocks 2 to 8 of a list learned in one session, against the published shares; no value is free. An item
     * comes again after so many seconds, and all of them count, for there is no pause between.
     */
    public static double errorOfLearning(double secondsBetween, double[] recalled) {
        double[] times = new double[recalled.length + 1];
        double squares = 0;
        for (int block = 1; block < times.length; block++) {
            times[block] = block * secondsBetween;
            double[] before = java.util.Arrays.copyOf(times, block);
            double[] decays = PublishedEquations.decays(before, USUAL.decayScale, USUAL.usualRate);
            double activation = PublishedEquations.activationAt(times[block], before, decays, block);
            double error = Equations.chanceOfRecall(activation, USUAL.threshold, USUAL.noise) - recalled[block - 1];
            squares += error * error;
        }
        return Math.sqrt(squares / recalled.length);
    }
}
