// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * What a few features of an answer weigh, learned answer by answer, and how sure that is: a Kalman filter (Kalman 1960,
 * Journal of Basic Engineering 82, 35–45; from memory). It begins with what is usual, moves far while little is known and
 * less and less later. Immutable.
 */
final class LearnedWeights {
    /**
     * What the doubt about a weight gains with each answer, as a share of the doubt it began with, up to which it can grow:
     * hands and heads change over months. Our own choice: a twentieth in a school year of first answers of the day.
     */
    private static final double DRIFT = 1e-5;

    private final double[] usualDoubt;
    private final double[] weights;
    /** The covariance of the weights, row by row, each up to its own weight: the rest is the same mirrored. */
    private final double[] covariance;

    private LearnedWeights(double[] usualDoubt, double[] weights, double[] covariance) {
        this.usualDoubt = usualDoubt;
        this.weights = weights;
        this.covariance = covariance;
    }

    /**
     * Before any answer.
     *
     * @param usual what each feature weighs
     * @param spreads standard deviations of that from child to child
     */
    static LearnedWeights usual(double[] usual, double[] spreads) {
        int n = usual.length;
        double[] doubt = new double[n];
        double[] covariance = new double[n * (n + 1) / 2];
        for (int i = 0; i < n; i++) {
            doubt[i] = spreads[i] * spreads[i];
            covariance[own(i)] = doubt[i];
        }
        return new LearnedWeights(doubt, usual.clone(), covariance);
    }

    double weight(int feature) {
        return weights[feature];
    }

    /** The variance of one weight. */
    double doubt(int feature) {
        return covariance[own(feature)];
    }

    /** Where a weight's own variance stands, at the end of its row. */
    private static int own(int feature) {
        return feature * (feature + 3) / 2;
    }

    /** What is expected of these features. */
    double expected(double[] features) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * features[i];
        }
        return sum;
    }

    /** The variance of what is expected. */
    double variance(double[] features) {
        double sum = 0;
        int k = 0;
        for (int i = 0; i < weights.length; i++) {
            double others = 0;
            for (int j = 0; j < i; j++, k++) {
                others += covariance[k] * features[j];
            }
            sum += features[i] * (2 * others + covariance[k] * features[i]);
            k++;
        }
        return sum;
    }

    /**
     * The same with what was {@link #shared} out already.
     *
     * @param shares what {@link #shared} gives for these features
     */
    double variance(double[] features, double[] shares) {
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            sum += shares[i] * features[i];
        }
        return sum;
    }

    /**
     * With one more observation.
     *
     * @param part what {@link #shared} gives for the observation's features
     * @param miss what was seen less what was expected
     * @param variance of that miss, the observation's own and everything else in doubt counted; more than
     *     {@link #variance(double[])}
     */
    LearnedWeights after(double[] part, double miss, double variance) {
        int n = weights.length;
        double[] moved = new double[n];
        double[] surer = new double[covariance.length];
        double share = 1 / variance;
        int k = 0;
        for (int i = 0; i < n; i++) {
            double gain = part[i] * share;
            moved[i] = weights[i] + gain * miss;
            for (int j = 0; j < i; j++, k++) {
                surer[k] = covariance[k] - gain * part[j];
            }
            surer[k] = Math.min(usualDoubt[i], covariance[k] - gain * part[i] + DRIFT * usualDoubt[i]);
            k++;
        }
        return new LearnedWeights(usualDoubt, moved, surer);
    }

    /** How far each weight varies together with what is expected of these features. */
    double[] shared(double[] features) {
        int n = weights.length;
        double[] product = new double[n];
        int k = 0;
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (int j = 0; j < i; j++, k++) {
                sum += covariance[k] * features[j];
                product[j] += covariance[k] * features[i];
            }
            product[i] += sum + covariance[k] * features[i];
            k++;
        }
        return product;
    }
}
