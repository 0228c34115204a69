// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * A sum of powers of ages, Σ (t − t_k)^(−d_k), held in a fixed number of fading terms, so that adding a presentation and
 * reading the sum cost the same whether there were five presentations or five thousand.
 *
 * <p>A power is an integral of exponentials, age^(−d) = 1/Γ(d) ∫ e^(d·u) exp(−e^u·age) du over all u; the trapezoid rule
 * with the step ln 3 turns it into terms each of which fades three times as slowly as the one before (the method: Beylkin
 * and Monzón 2005, Applied and Computational Harmonic Analysis 19, 17–48). For ages from one second to ten years of
 * practice, the sum is within 0.0015 of the exact one for decays from 0.03 to 0.8, and within 0.006 up to 1.5, so an
 * activation is off by no more than that; a test measures it.
 */
final class FadingSum {
    /** Terms of the sum; the last one covers everything slower and does not fade. */
    static final int TERMS = 22;

    private static final int FADING = TERMS - 1;
    private static final int MIDDLE = 10;
    private static final double STEP = Math.log(3);
    /** Fades per second of the slowest term: 3^−18, a twelfth in a year of the memory's clock. */
    private static final double SLOWEST = Math.pow(3, -18);

    private static final double MIDDLING = Math.pow(3, MIDDLE - 18);

    /** Less than this left is nothing left; smaller numbers would only be slow to reckon with. */
    private static final double NOTHING = 1e-60;

    /** The most a decay can be. */
    static final double MOST_DECAY = 1.9;

    private static final double ROW_STEP = 0.004;
    private static final int ROWS = (int) (MOST_DECAY / ROW_STEP);

    /** Coefficients of 1/Γ(z) = Σ c_k z^k (Abramowitz and Stegun 1964, 6.1.34; from memory, tested against a library). */
    private static final double[] RECIPROCAL_GAMMA = {
        1.0000000000000000,
        0.5772156649015329,
        -0.6558780715202538,
        -0.0420026350340952,
        0.1665386113822915,
        -0.0421977345555443,
        -0.0096219715278770,
        0.0072189432466630,
        -0.0011651675918591,
        -0.0002152416741149,
        0.0001280502823882,
        -0.0000201348547807,
        -0.0000012504934821,
        0.0000011330272320,
        -0.0000002056338417,
        0.0000000061160950,
        0.0000000050020075,
        -0.0000000011812746,
    };

    private static final double[] TABLE = table();

    private FadingSum() {}

    /**
     * How much of each term is left after some time.
     *
     * @param seconds not negative
     * @param left filled, {@link #TERMS} long
     */
    static void fade(double seconds, double[] left) {
        double slow = Math.exp(-SLOWEST * seconds);
        double quick = Math.exp(-MIDDLING * seconds);
        for (int i = 0; i < MIDDLE; i++) {
            left[i] = slow;
            left[MIDDLE + i] = quick;
            slow = slow < NOTHING ? 0 : slow * slow * slow;
            quick = quick < NOTHING ? 0 : quick * quick * quick;
        }
        left[FADING - 1] = quick;
        left[FADING] = 1;
    }

    /**
     * The sum of the terms once they have faded for some time; the terms stay as they are.
     *
     * @param seconds not negative
     */
    static double read(double[] terms, double seconds) {
        // Two chains side by side: the processor need not wait for one product before the next.
        double slow = Math.exp(-SLOWEST * seconds);
        double quick = Math.exp(-MIDDLING * seconds);
        double first = 0;
        double second = terms[FADING];
        for (int i = 0; i < MIDDLE; i++) {
            first += terms[i] * slow;
            second += terms[MIDDLE + i] * quick;
            slow = slow < NOTHING ? 0 : slow * slow * slow;
            quick = quick < NOTHING ? 0 : quick * quick * quick;
        }
        return first + second + terms[FADING - 1] * quick;
    }

    /** Lets the terms from {@code from} on fade; their sum then. */
    static double apply(double[] terms, int from, double[] left) {
        double even = 0;
        double odd = 0;
        for (int i = 0; i < TERMS; i += 2) {
            double first = terms[from + i] * left[i];
            double second = terms[from + i + 1] * left[i + 1];
            terms[from + i] = first;
            terms[from + i + 1] = second;
            even += first;
            odd += second;
        }
        return even + odd;
    }

    /** Adds {@code weight} presentations of age zero that will fade with that decay, at most {@link #MOST_DECAY}. */
    static void add(double[] terms, int from, double decay, double weight) {
        double place = Math.max(0, decay / ROW_STEP - 1);
        int row = Math.min((int) place, ROWS - 2);
        double next = weight * Math.min(1, place - row);
        double first = weight - next;
        int a = row * TERMS;
        // Two at a time: the compiler that starts quickly does not do that by itself.
        for (int i = 0; i < TERMS; i += 2) {
            terms[from + i] += first * TABLE[a + i] + next * TABLE[a + TERMS + i];
            terms[from + i + 1] += first * TABLE[a + i + 1] + next * TABLE[a + TERMS + i + 1];
        }
    }

    /** The terms of one presentation for decays {@link #ROW_STEP} apart; between two rows the sum is interpolated. */
    private static double[] table() {
        double[] table = new double[ROWS * TERMS];
        for (int row = 0; row < ROWS; row++) {
            double decay = ROW_STEP * (row + 1);
            double growth = Math.exp(STEP * decay);
            double term = STEP * reciprocalGamma(decay) * Math.pow(SLOWEST, decay);
            // All terms slower than the slowest: a part that does not fade and a part that fades with the slowest, so
            // that their sum and its slope are right.
            double fading = term / (3 * growth - 1);
            table[row * TERMS + FADING] = term / (growth - 1) - fading;
            table[row * TERMS] = fading;
            for (int i = 0; i < FADING; i++) {
                table[row * TERMS + i] += term;
                term *= growth;
            }
        }
        return table;
    }

    /** 1/Γ(d) for d from 0 to 2. */
    static double reciprocalGamma(double d) {
        if (d > 1) {
            return reciprocalGamma(d - 1) / (d - 1);
        }
        double sum = 0;
        for (int k = RECIPROCAL_GAMMA.length - 1; k >= 0; k--) {
            sum = (sum + RECIPROCAL_GAMMA[k]) * d;
        }
        return sum;
    }
}
