package fourfold.words;

import fourfold.progress.Mastery;

/**
 * A family's square of up to four stones, one for each level above new, laid from the lower left: read by its shape alone.
 * Blocks of half a row, which every common fixed font has; a sign of more and more ink where nothing beyond ASCII is shown.
 */
public final class Stones {
    /** Columns of a square. */
    public static final int WIDTH = 2;

    private static final String ASCII = ".:=#@";

    private Stones() {}

    /** The square of a level, two columns in one row. */
    public static String of(Mastery level, boolean unicode) {
        if (!unicode) {
            return ASCII.charAt(level.ordinal()) + " ";
        }
        return switch (level) {
            case NEW -> "· ";
            case ACQUIRING -> "▄ ";
            case ACCURATE -> "▄▄";
            case FLUENT -> "█▄";
            case LASTING -> "██";
        };
    }

    /** Whether a stone lies at a place. */
    public static boolean isLaid(int stones, boolean upper, boolean right) {
        return stones > (upper ? 2 : 0) + (right ? 1 : 0);
    }
}
