// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import fourfold.simulation.Examination.Tally;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;

/** What the children of one kind show, in the figures in which people were measured. */
final class KindFigures {
    private static final int CHILDREN = 40;
    private static final int[] RETENTIONS = {7, 35, 70, 350};
    private static final int[][] GAPS = {
        {0, 1, 2, 7, 21, 105}, {0, 1, 4, 7, 11, 21, 105}, {0, 1, 7, 14, 21, 105}, {0, 1, 7, 21, 35, 70, 105}
    };

    private final List<Examination> children;
    private final Laboratory laboratory;
    private final double[][] recalled = new double[RETENTIONS.length][];

    KindFigures(MemoryKind kind) {
        children = LongStream.rangeClosed(1, CHILDREN)
                .mapToObj(seed -> Examination.of(kind, seed))
                .toList();
        laboratory = new Laboratory(kind);
        for (int i = 0; i < RETENTIONS.length; i++) {
            recalled[i] = new double[GAPS[i].length];
            for (int j = 0; j < GAPS[i].length; j++) {
                recalled[i][j] = laboratory.afterGap(GAPS[i][j], RETENTIONS[i]);
            }
        }
    }

    /** The best of the tested gaps in days, for retention intervals of 7, 35, 70 and 350 days. */
    int[] bestGaps() {
        int[] best = new int[RETENTIONS.length];
        for (int i = 0; i < best.length; i++) {
            int at = 0;
            for (int j = 1; j < GAPS[i].length; j++) {
                at = recalled[i][j] > recalled[i][at] ? j : at;
            }
            best[i] = GAPS[i][at];
        }
        return best;
    }

    /** By how much the best gap falls at most from one retention interval to a longer one, in days. */
    double fallOfBestGap() {
        int[] best = bestGaps();
        double fall = 0;
        for (int i = 1; i < best.length; i++) {
            fall = Math.max(fall, best[i - 1] - best[i]);
        }
        return fall;
    }

    /** Log odds of recall after 35 days with the best gap, less those with none. */
    double gainOfSpacing() {
        double best = 0;
        for (double p : recalled[1]) {
            best = Math.max(best, p);
        }
        return logOdds(best) - logOdds(recalled[1][0]);
    }

    private static double logOdds(double p) {
        return Math.log(p / (1 - p));
    }

    double[] afterGaps(int retention) {
        return recalled[retention].clone();
    }

    /** Recall on day 28 as a part of that on day 1. */
    double keptToDay28() {
        return laboratory.afterDays(28) / laboratory.afterDays(1);
    }

    /** Right of 25 after a year of lessons. */
    double check() {
        return children.stream().mapToDouble(Examination::check).average().orElseThrow();
    }

    /** Share of right answers in the measured weeks. */
    double right() {
        return (double) children.stream().mapToInt(c -> c.tally().rights).sum()
                / children.stream().mapToInt(c -> c.tally().asked).sum();
    }

    /** The mean ln time of one child for products of two different factors from {@code least} to {@code most}. */
    private static double lnTime(Tally t, int least, int most) {
        double sum = 0;
        int count = 0;
        for (int a = least; a <= most; a++) {
            for (int b = least; b <= most; b++) {
                sum += a == b ? 0 : t.sum[a][b];
                count += a == b ? 0 : t.timed[a][b];
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    /** Ln time of 6–9 less that of 2–5, mean over children. */
    double sizeEffect() {
        return children.stream()
                .mapToDouble(c -> lnTime(c.tally(), 6, 9) - lnTime(c.tally(), 2, 5))
                .filter(d -> !Double.isNaN(d))
                .average()
                .orElseThrow();
    }

    /** SD between children of mean ln time, what hangs on the share right removed. */
    double spreadBetween() {
        List<double[]> points = new ArrayList<>();
        for (Examination c : children) {
            double y = (lnTime(c.tally(), 2, 5) + lnTime(c.tally(), 6, 9)) / 2;
            if (!Double.isNaN(y)) {
                points.add(new double[] {(double) c.tally().rights / c.tally().asked, y});
            }
        }
        double n = points.size();
        double mx = points.stream().mapToDouble(p -> p[0]).sum() / n;
        double my = points.stream().mapToDouble(p -> p[1]).sum() / n;
        double xx = points.stream().mapToDouble(p -> (p[0] - mx) * (p[0] - mx)).sum();
        double xy = points.stream().mapToDouble(p -> (p[0] - mx) * (p[1] - my)).sum();
        double yy = points.stream().mapToDouble(p -> (p[1] - my) * (p[1] - my)).sum();
        return Math.sqrt((yy - xy * xy / xx) / (n - 2));
    }

    /** SD of ln time within a child, for two different factors from {@code least} to {@code most}. */
    double spreadWithin(int least, int most) {
        double sum = 0;
        int counted = 0;
        for (Examination c : children) {
            Tally t = c.tally();
            double s = 0;
            double q = 0;
            int n = 0;
            for (int a = least; a <= most; a++) {
                for (int b = least; b <= most; b++) {
                    s += a == b ? 0 : t.sum[a][b];
                    q += a == b ? 0 : t.squares[a][b];
                    n += a == b ? 0 : t.timed[a][b];
                }
            }
            if (n > 5) {
                sum += Math.sqrt(Math.max(0, (q - s * s / n) / (n - 1)));
                counted++;
            }
        }
        return sum / counted;
    }

    /** What ten more in the product and a factor of five add to ln time, by least squares over the 12 facts of the data. */
    double[] slopes() {
        double[][] normal = new double[3][4];
        for (int a = 2; a <= 9; a++) {
            for (int b = 2; b <= 9; b++) {
                if (a == b || a <= 5 != b <= 5) {
                    continue;
                }
                double[] x = {1, a * b / 10.0, a == 5 || b == 5 ? 1 : 0};
                double y = residual(a, b);
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 3; j++) {
                        normal[i][j] += x[i] * x[j];
                    }
                    normal[i][3] += x[i] * y;
                }
            }
        }
        double[] solved = solve(normal);
        return new double[] {solved[1], solved[2]};
    }

    /** How far a fact's ln time lies from the child's mean, mean over children. */
    private double residual(int a, int b) {
        double sum = 0;
        int count = 0;
        for (Examination c : children) {
            Tally t = c.tally();
            if (t.timed[a][b] > 0) {
                sum += t.sum[a][b] / t.timed[a][b] - lnTime(t, 2, 9);
                count++;
            }
        }
        return sum / count;
    }

    private static double[] solve(double[][] m) {
        int n = m.length;
        for (int p = 0; p < n; p++) {
            for (int r = 0; r < n; r++) {
                double f = r == p ? 0 : m[r][p] / m[p][p];
                for (int k = 0; k <= n; k++) {
                    m[r][k] -= f * m[p][k];
                }
            }
        }
        double[] x = new double[n];
        for (int p = 0; p < n; p++) {
            x[p] = m[p][n] / m[p][p];
        }
        return x;
    }

    /** Ln time of n × n less that of its neighbours n × (n ± 1), n from 3 to 8. */
    double ties() {
        double sum = 0;
        for (int n = 3; n <= 8; n++) {
            double near = residual(n, n - 1) + residual(n - 1, n) + residual(n, n + 1) + residual(n + 1, n);
            sum += residual(n, n) - near / 4;
        }
        return sum / 6;
    }

    /** Ln time of the divisions of a family less that of its products, mean over families of 2–9 and children. */
    double divisions() {
        double sum = 0;
        int count = 0;
        for (Examination c : children) {
            Tally t = c.tally();
            for (int a = 2; a <= 9; a++) {
                for (int b = a; b <= 9; b++) {
                    int products = a == b ? t.timed[a][b] : t.timed[a][b] + t.timed[b][a];
                    double product = a == b ? t.sum[a][b] : t.sum[a][b] + t.sum[b][a];
                    if (products > 0 && t.quotients[a][b] > 0) {
                        sum += t.quotientSum[a][b] / t.quotients[a][b] - product / products;
                        count++;
                    }
                }
            }
        }
        return sum / count;
    }

    /** Shares of wrong products: related to an operand, in another table, in no table. */
    double[] errors() {
        double related =
                children.stream().mapToInt(c -> c.tally().operandRelated).sum();
        double other = children.stream().mapToInt(c -> c.tally().otherTable).sum();
        double none = children.stream().mapToInt(c -> c.tally().noTable).sum();
        double all = related + other + none;
        return new double[] {related / all, other / all, none / all};
    }

    /** Digits of right answers in a minute of answering. */
    double digitsPerMinute() {
        return children.stream()
                .mapToDouble(c -> 60 * c.tally().digits / c.tally().seconds)
                .average()
                .orElseThrow();
    }

    /** How often the fourth answer was right after three right ones, for factors from {@code least} to {@code most}. */
    double fourthAfterThree(int least, int most) {
        int all = 0;
        int right = 0;
        for (Examination c : children) {
            for (int a = least; a <= most; a++) {
                for (int b = least; b <= most; b++) {
                    boolean[] r = c.tally().right[a][b];
                    if (a != b && r[0] && r[1] && r[2]) {
                        all++;
                        right += r[3] ? 1 : 0;
                    }
                }
            }
        }
        return (double) right / all;
    }
}
