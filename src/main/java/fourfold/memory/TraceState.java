// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * One trace: for each rate of forgetting on the grid, the fading sum that the presentations would have left with it and
 * the evidence for it; and the mixture of the sums by how likely each rate is. Mutable; copied before it is shared.
 */
final class TraceState {
    private final Parameters parameters;
    /** The most strength counts towards a decay, and how the density of the rates bends: worked out once. */
    private final double most;

    private final double slowing;
    private final double[] sums;
    private final double[] evidence;
    /** How likely each rate is, in the light of related facts too. */
    private final double[] weights;

    private final double[] mixture;
    private boolean mixed = true;
    private double rate;
    private double clock;
    private long askedAt;
    private int presentations;
    private int answers;
    private boolean lastRight;
    private Offset slower;
    private Offset surer;

    TraceState(Parameters parameters) {
        this.parameters = parameters;
        this.most = Math.exp(parameters.strongest);
        double step = parameters.rateStep / parameters.rateSpread;
        this.slowing = Math.exp(-step * step);
        this.sums = new double[parameters.rates * FadingSum.TERMS];
        this.evidence = new double[parameters.rates];
        java.util.Arrays.fill(evidence, 1.0 / parameters.rates);
        this.weights = new double[parameters.rates];
        this.mixture = new double[FadingSum.TERMS];
        this.rate = parameters.usualRate;
        this.slower = Offset.unknown(parameters.tracesDifferInTime);
        this.surer = Offset.unknown(parameters.tracesDifferInOdds);
    }

    TraceState(TraceState other) {
        this.parameters = other.parameters;
        this.most = other.most;
        this.slowing = other.slowing;
        this.sums = other.sums.clone();
        this.evidence = other.evidence.clone();
        this.weights = other.weights.clone();
        this.mixture = other.mixture.clone();
        this.mixed = other.mixed;
        this.rate = other.rate;
        this.clock = other.clock;
        this.askedAt = other.askedAt;
        this.presentations = other.presentations;
        this.answers = other.answers;
        this.lastRight = other.lastRight;
        this.slower = other.slower;
        this.surer = other.surer;
    }

    /**
     * Σ age^(−d) at that moment of the memory's clock, over all rates as likely as they are; 0 for a blank trace. What is
     * shared must have been {@link #mix mixed}: this would write to it otherwise.
     */
    double strength(double at) {
        if (presentations == 0) {
            return 0;
        }
        mix();
        return FadingSum.read(mixture, age(at));
    }

    /** The same from what {@link #settle} left for that moment; quicker. */
    double strength(double[] strengths) {
        double sum = 0;
        for (int k = 0; k < strengths.length; k++) {
            sum += weights[k] * strengths[k];
        }
        return sum;
    }

    /**
     * The strength for each rate on the grid; every sum is left faded to that moment.
     *
     * @param left room for {@link FadingSum#TERMS} numbers
     */
    void settle(double at, double[] left, double[] strengths) {
        if (presentations == 0) {
            return;
        }
        FadingSum.fade(age(at), left);
        for (int k = 0; k < strengths.length; k++) {
            strengths[k] = FadingSum.apply(sums, k * FadingSum.TERMS, left);
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

    /** Settles how likely each rate is, by the evidence so far and the rate that related facts suggest. */
    void compare(double expectedRate) {
        weigh(expectedRate);
        rate = 0;
        for (int k = 0; k < weights.length; k++) {
            rate += weights[k] * parameters.rate(k);
        }
        mixed = false;
    }

    /** Mixes the sums anew, as likely as their rates are: once for all answers since the strength was last asked for. */
    void mix() {
        if (mixed) {
            return;
        }
        mixed = true;
        java.util.Arrays.fill(mixture, 0);
        for (int k = 0; k < weights.length; k++) {
            int from = k * FadingSum.TERMS;
            for (int i = 0; i < FadingSum.TERMS; i++) {
                mixture[i] += weights[k] * sums[from + i];
            }
        }
    }

    /** Evidence times a normal density around what is expected; on even steps the density is a running product. */
    private void weigh(double expectedRate) {
        double spread = parameters.rateSpread;
        double step = parameters.rateStep / spread;
        double off = (parameters.slowestRate - Math.max(0, expectedRate)) / spread;
        double density = Math.exp(-off * off / 2);
        double growth = Math.exp(-off * step - step * step / 2);
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

    /** Ln seconds by which its answers come later than its activation and its kind of fact say. */
    Offset slower() {
        return slower;
    }

    /** Log odds by which it is known more surely than its activation says. */
    Offset surer() {
        return surer;
    }

    void isSlower(Offset by) {
        slower = by;
    }

    void isSurer(Offset by) {
        surer = by;
    }

    /** How many answers from memory have been weighed. */
    int answers() {
        return answers;
    }
}
