// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.insight.Grid;
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

    /**
     * What a parent is told of a family beside its stones, as one sign; a blank if there is nothing.
     *
     * @param lower whether its level is below its stones now
     */
    public static char mark(Grid.Cell cell, boolean lower) {
        char sign = cell.sign();
        return lower && (sign == ' ' || sign == '+') ? '<' : sign;
    }

    /** Whether a stone lies at a place. */
    public static boolean isLaid(int stones, boolean upper, boolean right) {
        return stones > (upper ? 2 : 0) + (right ? 1 : 0);
    }
}
