// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * One trace: for each rate of forgetting on the grid, the fading sum that the presentations would have left with it and
 * the evidence for it; and the mixture of the sums by how likely each rate is. Mutable; copied before it is shared.
 */
final class TraceState {
    private final Parameters parameters;
    private final double[] sums;
    private final double[] evidence;
    private final double[] mixture;
    private double rate;
    private double clock;
    private long askedAt;
    private int presentations;
    private int answers;
    private boolean lastRight;

    TraceState(Parameters parameters) {
        this.parameters = parameters;
        this.sums = new double[parameters.rates * FadingSum.TERMS];
        this.evidence = new double[parameters.rates];
        java.util.Arrays.fill(evidence, 1.0 / parameters.rates);
        this.mixture = new double[FadingSum.TERMS];
        this.rate = parameters.usualRate;
    }

    TraceState(TraceState other) {
        this.parameters = other.parameters;
        this.sums = other.sums.clone();
        this.evidence = other.evidence.clone();
        this.mixture = other.mixture.clone();
        this.rate = other.rate;
        this.clock = other.clock;
        this.askedAt = other.askedAt;
        this.presentations = other.presentations;
        this.answers = other.answers;
        this.lastRight = other.lastRight;
    }

    /** Σ age^(−d) at that moment of the memory's clock, over all rates as likely as they are; 0 for a blank trace. */
    double strength(double at) {
        return presentations == 0 ? 0 : FadingSum.read(mixture, age(at));
    }

    /** The strength for each rate on the grid; every sum is left faded to that moment. */
    void settle(double at, double[] strengths) {
        if (presentations == 0) {
            return;
        }
        double[] left = new double[FadingSum.TERMS];
        FadingSum.fade(age(at), left);
        for (int k = 0; k < strengths.length; k++) {
            FadingSum.apply(sums, k * FadingSum.TERMS, left);
            strengths[k] = total(k * FadingSum.TERMS);
        }
        clock = Math.max(clock, at);
    }

    /** Adds strength that was learned elsewhere, as if long ago. */
    void bringAlong(double[] strengths) {
        double wanted = Math.exp(parameters.broughtAlong);
        double[] old = new double[FadingSum.TERMS];
        double[] left = new double[FadingSum.TERMS];
        FadingSum.fade(parameters.broughtAge, left);
        for (int k = 0; k < strengths.length; k++) {
            double decay = parameters.rate(k);
            double weight = wanted * Math.pow(parameters.broughtAge, decay);
            java.util.Arrays.fill(old, 0);
            FadingSum.add(old, 0, decay, weight);
            for (int i = 0; i < FadingSum.TERMS; i++) {
                sums[k * FadingSum.TERMS + i] += old[i] * left[i];
            }
            strengths[k] += wanted;
        }
    }

    /** Adds a presentation at that moment; each rate's decay comes from the strength it had left. */
    void present(double at, long millis, double[] strengths) {
        double most = Math.exp(parameters.strongest);
        for (int k = 0; k < strengths.length; k++) {
            double decay = parameters.rate(k) + parameters.decayScale * Math.min(most, strengths[k]);
            FadingSum.add(sums, k * FadingSum.TERMS, decay, 1);
        }
        clock = at;
        askedAt = millis;
        presentations++;
    }

    /** Weighs the rates by how likely each makes the new answer; a little of the weight drifts back to all alike. */
    void weigh(double[] likelihoods, boolean right) {
        answers++;
        lastRight = right;
        double sum = 0;
        for (int k = 0; k < evidence.length; k++) {
            evidence[k] *= likelihoods[k];
            sum += evidence[k];
        }
        double alike = parameters.drift / evidence.length;
        for (int k = 0; k < evidence.length; k++) {
            evidence[k] = (1 - parameters.drift) * evidence[k] / sum + alike;
        }
    }

    /** Mixes the sums anew, with the evidence so far and the rate that related facts suggest. */
    void mix(double expectedRate) {
        double[] weights = weights(expectedRate);
        java.util.Arrays.fill(mixture, 0);
        rate = 0;
        for (int k = 0; k < weights.length; k++) {
            rate += weights[k] * parameters.rate(k);
            int from = k * FadingSum.TERMS;
            for (int i = 0; i < FadingSum.TERMS; i++) {
                mixture[i] += weights[k] * sums[from + i];
            }
        }
    }

    /** Evidence times a normal density around what is expected; on even steps the density is a running product. */
    private double[] weights(double expectedRate) {
        double[] weights = new double[evidence.length];
        double spread = parameters.rateSpread;
        double step = parameters.rateStep / spread;
        double off = (parameters.slowestRate - Math.max(0, expectedRate)) / spread;
        double density = Math.exp(-off * off / 2);
        double growth = Math.exp(-off * step - step * step / 2);
        double slowing = Math.exp(-step * step);
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            weights[k] = evidence[k] * (density + 1e-12);
            sum += weights[k];
            density *= growth;
            growth *= slowing;
        }
        for (int k = 0; k < weights.length; k++) {
            weights[k] /= sum;
        }
        return weights;
    }

    private double total(int from) {
        double even = 0;
        double odd = 0;
        for (int i = 0; i < FadingSum.TERMS; i += 2) {
            even += sums[from + i];
            odd += sums[from + i + 1];
        }
        return even + odd;
    }

    /** Seconds since the last presentation, at least one. */
    private double age(double at) {
        return Math.max(1, at - clock);
    }

    /** The rate of forgetting that is now most likely on the whole. */
    double rate() {
        return rate;
    }

    /** When it was last presented, milliseconds since 1970. */
    long askedAt() {
        return askedAt;
    }

    /** How often it was presented, answers in view counted too. */
    int presentations() {
        return presentations;
    }

    /** Whether the last answer from memory was right; false if there was none. */
    boolean lastRight() {
        return lastRight;
    }

    /** Whether only a few answers from memory have been weighed; see {@link Pace#FRESH}. */
    boolean isFresh() {
        return answers < Pace.FRESH;
    }

    /** How many answers from memory have been weighed. */
    int answers() {
        return answers;
    }
}
