// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * How one child's own record corrects the chances of the model: log odds = a + b · x − c · ln(days since it was last asked)
 * − d · ln(weeks), where x are the model's log odds and the last two count from one day and from one week on. What is
 * usual is known beforehand and not surely: the model's chances are trusted in part at first, and fully only when they
 * have come true for this child; what long gaps do is learned from the long gaps there were. A logistic regression, learned
 * answer by answer (after West, Harrison and Migon 1985, Journal of the American Statistical Association 80, 73–83; from
 * memory). Immutable.
 */
final class Correction {
    /**
     * A step of the model's log odds counts four fifths at first (our own choice; people whose every answer was timed in a
     * laboratory asked for two fifths). Each e-fold of days since the last answer takes a tenth off, and beyond a week
     * another tenth: the model's own forgetting is right on the mean (see the table of evidence), a single child's is not
     * known. Our own choice, on tuning children, as are the spreads.
     */
    private static final double[] USUAL = {0.3, 0.8, -0.1, -0.1};

    private static final double[] CHILDREN_DIFFER = {0.7, 0.3, 0.3, 0.4};

    /** Days from which a gap counts, and counts once more. Our own choice. */
    private static final double A_DAY = 1;

    private static final double A_WEEK = 7;

    /**
     * Days within which an answer belongs to the same sitting: an hour. What a child knows then is in mind still, and says
     * little of tomorrow; so it has a correction of its own, which never lowers. Our own choice, as is how far children
     * differ in it.
     */
    private static final double SITTING = 1 / 24.0;

    private static final double IN_MIND_DIFFERS = 1;

    private static final int OFFSET = 0;
    private static final int SLOPE = 1;
    private static final int DAYS = 2;
    private static final int WEEKS = 3;

    private static final double MOST_LOG_ODDS = 6;
    private static final double LEAST_SLOPE = 0.2;

    /** The least an answer's own variance p(1 − p) counts as, so that no one answer decides everything. */
    private static final double LEAST_VARIANCE = 1e-3;

    private static final Correction CHILD_UNKNOWN =
            new Correction(LearnedWeights.usual(USUAL, CHILDREN_DIFFER), Offset.unknown(IN_MIND_DIFFERS));

    private final LearnedWeights weights;
    /** Log odds that are added in the same sitting. */
    private final Offset inMind;

    private Correction(LearnedWeights weights, Offset inMind) {
        this.weights = weights;
        this.inMind = inMind;
    }

    /** Of a child of whom nothing is known. */
    static Correction usual() {
        return CHILD_UNKNOWN;
    }

    private static double[] features(double chance, double days) {
        double beyondADay = days > A_DAY ? Math.log(days / A_DAY) : 0;
        return new double[] {1, logOdds(chance), beyondADay, days > A_WEEK ? Math.log(days / A_WEEK) : 0};
    }

    /** The corrected log odds of a chance of the model, so many days after the trace was last asked. */
    double middle(double chance, double days, Offset own) {
        return middle(features(chance, days), days, own);
    }

    private double middle(double[] f, double days, Offset own) {
        // However the record reads, what is surer for the model stays surer, and no forecast rises by waiting.
        return weights.weight(OFFSET)
                + Math.max(LEAST_SLOPE, weights.weight(SLOPE)) * f[SLOPE]
                + Math.min(0, weights.weight(DAYS)) * f[DAYS]
                + Math.min(0, weights.weight(WEEKS)) * f[WEEKS]
                + (days <= SITTING ? Math.max(0, inMind.value()) : 0)
                + own.value();
    }

    /** The variance of these log odds: doubt about the child, about what the gap does, and about the trace. */
    double doubt(double days, Offset own) {
        return doubt(features(0.5, days), own);
    }

    private double doubt(double[] f, Offset own) {
        return weights.doubt(OFFSET)
                + weights.doubt(DAYS) * f[DAYS] * f[DAYS]
                + weights.doubt(WEEKS) * f[WEEKS] * f[WEEKS]
                + own.doubt();
    }

    /**
     * The mean chance over everything in doubt (the usual approximation of a logistic curve averaged over a normal
     * distribution: MacKay 1992, Neural Computation 4, 720–736; from memory, tested against an integral). Doubt about a gap
     * only lowers a chance: below one half it is left out, so that no forecast rises by waiting.
     */
    double chance(double chance, double days, Offset own) {
        return chance(features(chance, days), days, own);
    }

    private double chance(double[] f, double days, Offset own) {
        double middle = middle(f, days, own);
        double doubt = middle > 0 ? doubt(f, own) : weights.doubt(OFFSET) + own.doubt();
        return Equations.logistic(middle / Math.sqrt(1 + Math.PI / 8 * doubt));
    }

    /** What one answer taught: the correction after it, and how far its trace lies off after it. */
    record Learned(Correction correction, Offset own) {}

    /**
     * With one more forecast that came true or did not. The second answer of a sitting teaches what it is worth to have a fact
     * in mind and nothing else.
     */
    Learned after(double chance, double days, Offset own, boolean came) {
        double[] f = features(chance, days);
        double foretold = chance(f, days, own);
        double answers = Math.max(LEAST_VARIANCE, foretold * (1 - foretold));
        double miss = ((came ? 1 : 0) - foretold) / answers;
        double[] shares = weights.shared(f);
        double variance = weights.variance(f, shares) + own.doubt() + 1 / answers;
        return days <= SITTING
                ? new Learned(new Correction(weights, inMind.after(miss, variance + inMind.doubt())), own)
                : new Learned(new Correction(weights.after(shares, miss, variance), inMind), own.after(miss, variance));
    }

    private static double logOdds(double chance) {
        double x = Math.log(chance / (1 - chance));
        return Math.max(-MOST_LOG_ODDS, Math.min(MOST_LOG_ODDS, x));
    }
}
