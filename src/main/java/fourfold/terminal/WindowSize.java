// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How large the window on the desktop is.
 *
 * @param columns characters side by side, 40 to 400
 * @param rows rows of characters, 12 to 200
 * @param points size of the letters in points, 12 to 40
 */
public record WindowSize(int columns, int rows, int points) {
    /** What a window has when nothing else was chosen. */
    public static final WindowSize USUAL = new WindowSize(80, 24, 20);

    private static final Pattern WRITTEN = Pattern.compile("(\\d{1,3})x(\\d{1,3})(?: (\\d{1,2}))?");

    /** How many rows the window can be brought to by keys, from large letters to small. */
    private static final List<Integer> ROWS = List.of(20, 22, 24, 27, 30, 34, 40, 48, 60);

    public WindowSize {
        if (columns < 40 || columns > 400 || rows < 12 || rows > 200 || points < 12 || points > 40) {
            throw new IllegalArgumentException(
                    "no window of " + columns + " by " + rows + " with letters of " + points + " points");
        }
    }

    /** Pixels from one row to the next, a fifth more than a letter is tall. */
    int cellHeight() {
        return (int) Math.round(points * 1.2);
    }

    /** The letters that fit into rows of so many pixels, as far as a window may have them. */
    static int points(int cellHeight) {
        return Math.max(12, Math.min(40, (int) Math.round(cellHeight / 1.2)));
    }

    /**
     * The rows after letters were made larger or smaller by so many steps: the nearest of those on offer counts, and there is
     * no step beyond the first and the last.
     */
    static int zoomed(int rows, int larger) {
        int nearest = 0;
        for (int i = 0; i < ROWS.size(); i++) {
            if (Math.abs(ROWS.get(i) - rows) < Math.abs(ROWS.get(nearest) - rows)) {
                nearest = i;
            }
        }
        return ROWS.get(Math.max(0, Math.min(ROWS.size() - 1, nearest - larger)));
    }

    /** As it is remembered. */
    public String written() {
        return columns + "x" + rows + " " + points;
    }

    /** With letters of another size. */
    public WindowSize withPoints(int other) {
        return new WindowSize(columns, rows, other);
    }

    /** The size that was remembered; empty if it is no size a window can have. */
    public static Optional<WindowSize> remembered(String written) {
        Matcher matcher = WRITTEN.matcher(written);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        try {
            int points = matcher.group(3) == null ? USUAL.points() : Integer.parseInt(matcher.group(3));
            return Optional.of(
                    new WindowSize(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)), points));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
