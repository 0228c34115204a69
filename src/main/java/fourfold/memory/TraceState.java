package fourfold.memory;

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

    TraceState(Parameters parameters) {
        this.parameters = parameters;
        this.sums = new double[parameters.rates() * FadingSum.TERMS];
        this.evidence = new double[parameters.rates()];
        this.mixture = new double[FadingSum.TERMS];
        this.rate = parameters.usualRate();
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
    }

    /** Σ age^(−d) at that moment of the memory's clock, over all rates as likely as they are; 0 for a blank trace. */
    double strength(double at) {
        if (presentations == 0) {
            return 0;
        }
        double[] left = new double[FadingSum.TERMS];
        FadingSum.fade(age(at), left);
        return FadingSum.read(mixture, 0, left);
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
        double wanted = Math.exp(parameters.broughtAlong());
        double[] old = new double[FadingSum.TERMS];
        double[] left = new double[FadingSum.TERMS];
        FadingSum.fade(parameters.broughtAge(), left);
        for (int k = 0; k < strengths.length; k++) {
            double decay = parameters.rate(k);
            double weight = wanted * Math.pow(parameters.broughtAge(), decay);
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
        double most = Math.exp(parameters.strongest());
        for (int k = 0; k < strengths.length; k++) {
            double decay = parameters.rate(k) + parameters.decayScale() * Math.min(most, strengths[k]);
            FadingSum.add(sums, k * FadingSum.TERMS, decay, 1);
        }
        clock = at;
        askedAt = millis;
        presentations++;
    }

    /** Lets older evidence pale and adds the new, one natural logarithm of a likelihood for each rate. */
    void weigh(double[] logLikelihoods) {
        answers++;
        for (int k = 0; k < evidence.length; k++) {
            evidence[k] = parameters.memoryOfEvidence() * evidence[k] + logLikelihoods[k];
        }
    }

    /** Mixes the sums anew, with the evidence so far and the rate that the trace's kin suggest. */
    void mix(double expectedRate) {
        double[] weights = weights(expectedRate);
        java.util.Arrays.fill(mixture, 0);
        rate = 0;
        for (int k = 0; k < weights.length; k++) {
            rate += weights[k] * parameters.rate(k);
            if (weights[k] > 1e-9) {
                for (int i = 0; i < FadingSum.TERMS; i++) {
                    mixture[i] += weights[k] * sums[k * FadingSum.TERMS + i];
                }
            }
        }
    }

    private double[] weights(double expectedRate) {
        double[] weights = new double[evidence.length];
        double best = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < weights.length; k++) {
            double off = (parameters.rate(k) - expectedRate) / parameters.rateSpread();
            weights[k] = evidence[k] - off * off / 2;
            best = Math.max(best, weights[k]);
        }
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            weights[k] = Math.exp(weights[k] - best);
            sum += weights[k];
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

    /** How many answers from memory have been weighed. */
    int answers() {
        return answers;
    }
}
