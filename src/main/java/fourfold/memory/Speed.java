// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;

/**
 * How fast one child's answers come when they are recalled: ln seconds of thinking at activation 0, by the kind of fact, and
 * how far single answers scatter around that. Learned from every right answer, the more the surer it is that it was
 * recalled and not worked out. Immutable.
 */
final class Speed {
    /**
     * What is usual: ten more of product take 4 % longer (Suárez-Pellicioni and others 2019, as in the table of evidence),
     * divisions longer than products (direction published; Campbell 1999), what goes by rule and squares shorter (direction
     * published; De Brauwer, Verguts and Fias 2006). The sizes of the last two, and how much children differ in all three,
     * are our own choice; that their pace differs by a good third is measured (as the first).
     */
    private static final double[] USUAL = {0, 0.038, 0.1, -0.15};

    private static final double[] CHILDREN_DIFFER = {0.4, 0.03, 0.1, 0.15};

    /** How many answers the usual scatter counts as, and how many it looks back on. Our own choice. */
    private static final double SCATTER_TRUST = 30;

    private static final double SCATTER_MEMORY = 300;

    /** An answer further off than so many standard deviations counts as that far off. Our own choice. */
    private static final double FARTHEST = 2.5;

    /** An answer with less than this chance of having been recalled tells nothing of recall. Our own choice. */
    private static final double LEAST_SHARE = 0.05;

    private static final double LEAST_SCATTER = 0.01;
    private static final int FEATURES = 4;
    private static final double[][] OF_TRACE = new double[Trace.COUNT][];
    private static final double[] ORDINARY = new double[FEATURES];

    static {
        for (Trace trace : Families.traces()) {
            Family family = trace.family();
            boolean rule = family.contains(1) || family.contains(10);
            double[] features = {
                1,
                rule ? 0 : (family.product() - 30) / 10.0,
                trace.operation() == Operation.DIVIDE ? 1 : 0,
                rule || family.isSquare() ? 1 : 0
            };
            OF_TRACE[trace.index()] = features;
            for (int i = 0; i < FEATURES; i++) {
                ORDINARY[i] += features[i] / Trace.COUNT;
            }
        }
    }

    private final LearnedWeights weights;
    private final double scatter;
    private final double seen;

    private Speed(LearnedWeights weights, double scatter, double seen) {
        this.weights = weights;
        this.scatter = scatter;
        this.seen = seen;
    }

    static Speed usual(Parameters parameters) {
        double[] usual = USUAL.clone();
        usual[0] = parameters.usualPace;
        return new Speed(
                LearnedWeights.usual(usual, CHILDREN_DIFFER), parameters.spread * parameters.spread, SCATTER_TRUST);
    }

    /** Ln seconds of thinking at activation 0 for a trace. */
    Level level(int trace, Offset own) {
        double[] features = OF_TRACE[trace];
        double unsure = weights.variance(features) + own.doubt();
        return new Level(weights.expected(features) + own.value(), Math.sqrt(scatter + unsure));
    }

    /** The same for a fact like most others, of which nothing is known. */
    Level ordinary() {
        return new Level(weights.expected(ORDINARY), Math.sqrt(scatter + weights.variance(ORDINARY)));
    }

    /**
     * Ln seconds of thinking that are to be expected at activation 0.
     *
     * @param middle the median
     * @param spread the standard deviation of one answer around it, all doubt about the median counted
     */
    record Level(double middle, double spread) {}

    /** What one right answer taught: the speed after it, and how far its trace lies off after it. */
    record Learned(Speed speed, Offset own) {}

    /**
     * With one more right answer.
     *
     * @param atNought ln seconds of thinking, were the activation 0
     * @param share the chance that it was recalled, 0 to 1; the lower, the less it counts
     */
    Learned after(int trace, Offset own, double atNought, double share) {
        if (share < LEAST_SHARE) {
            return new Learned(this, own);
        }
        double[] features = OF_TRACE[trace];
        double[] shares = weights.shared(features);
        double unsure = weights.variance(features, shares) + own.doubt();
        double variance = scatter / share + unsure;
        double most = FARTHEST * Math.sqrt(variance);
        double miss = atNought - weights.expected(features) - own.value();
        miss = Math.max(-most, Math.min(most, miss));
        double more = Math.min(seen + share, SCATTER_MEMORY);
        double scattered = Math.max(LEAST_SCATTER, miss * miss - unsure);
        return new Learned(
                new Speed(weights.after(shares, miss, variance), scatter + share / more * (scattered - scatter), more),
                own.after(miss, variance));
    }
}
