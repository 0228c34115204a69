package fourfold.progress;

/**
 * A share of some tries, with the 95 % interval in which the true share may lie (Wilson 1927, Journal of the American
 * Statistical Association 22, 209–212).
 *
 * @param right how many came off, 0 to {@code asked}
 * @param asked how many tries there were, 0 or more
 */
public record Share(int right, int asked) {
    private static final double Z = 1.959964;

    public Share {
        if (right < 0 || right > asked) {
            throw new IllegalArgumentException(right + " of " + asked + " is no share");
        }
    }

    /** Lower end, 0 to 1; 0 where nothing was tried. */
    public double low() {
        return asked == 0 ? 0 : Math.max(0, middle() - reach());
    }

    /** Upper end, 0 to 1; 1 where nothing was tried. */
    public double high() {
        return asked == 0 ? 1 : Math.min(1, middle() + reach());
    }

    private double middle() {
        double p = (double) right / asked;
        return (p + Z * Z / (2 * asked)) / (1 + Z * Z / asked);
    }

    private double reach() {
        double p = (double) right / asked;
        return Z / (1 + Z * Z / asked) * Math.sqrt(p * (1 - p) / asked + Z * Z / (4.0 * asked * asked));
    }
}
