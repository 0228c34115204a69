package fourfold.terminal;

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

    private static final Pattern WRITTEN = Pattern.compile("(\\d{1,3})x(\\d{1,3})");

    public WindowSize {
        if (columns < 40 || columns > 400 || rows < 12 || rows > 200 || points < 12 || points > 40) {
            throw new IllegalArgumentException(
                    "no window of " + columns + " by " + rows + " with letters of " + points + " points");
        }
    }

    /** With letters of another size. */
    public WindowSize withPoints(int other) {
        return new WindowSize(columns, rows, other);
    }

    /** The usual window in the size that was remembered; empty if it is no size a window can have. */
    public static Optional<WindowSize> remembered(String written) {
        Matcher matcher = WRITTEN.matcher(written);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new WindowSize(
                    Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)), USUAL.points()));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
