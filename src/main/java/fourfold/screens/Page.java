package fourfold.screens;

import java.time.Instant;
import java.util.Optional;

/** One page of the program: it draws itself, and answers keys. */
public interface Page {
    /** Draws the page on an empty sheet. */
    void draw(Picture picture);

    /** The colours the page is shown in; empty for those of the page it was opened from. */
    default Optional<Theme> theme() {
        return Optional.empty();
    }

    /** What a key does. */
    Move on(Key key, Instant at);

    /** Called about twenty times a second; true if the page must be drawn again. */
    default boolean tick(Instant at) {
        return false;
    }

    /** Called when a drawing has left the program; true if the page waits for no earlier key. */
    default boolean painted(Instant at) {
        return false;
    }

    /** The program is about to be suspended or to lose its window. */
    default void interrupted(Instant at) {}

    /** Called when the page in front of this one has closed. */
    default void returned() {}

    /** The program is ending. */
    default void leave(Instant at) {}
}
