package fourfold.terminal;

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
    Navigation on(Key key, Instant at);

    /** Called about twenty times a second, and when the file's thread has done something; true if the page must be drawn again. */
    default boolean tick(Instant at) {
        return false;
    }

    /** Where the page goes by itself; asked after each tick. */
    default Navigation next() {
        return Navigation.STAY;
    }

    /** Called when a drawing has left the program; true if the page waits for no earlier key. */
    default boolean painted(Instant at) {
        return false;
    }

    /** The program is about to be suspended or to lose its window. */
    default void interrupted(Instant at) {}

    /** Called when the page in front of this one has closed. */
    default void returned() {}

    /** The program is ending. What is still to be done is begun on the file's thread; the program ends when it is done. */
    default void leave(Instant at) {}
}
