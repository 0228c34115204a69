// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Instant;

/** What a page is told, each with its time. */
public sealed interface PageEvent {
    /** When it was. */
    Instant at();

    /**
     * A key was pressed.
     *
     * @param columns how wide the window is
     * @param rows how high the window is
     */
    record Pressed(Key key, Instant at, int columns, int rows) implements PageEvent {}

    /** Time went by: about twenty times a second. */
    record Tick(Instant at) implements PageEvent {}

    /** A drawing of the page has left the program. */
    record Painted(Instant at) implements PageEvent {}

    /** The program is about to be suspended, lost its window, or the computer slept. */
    record Interrupted(Instant at) implements PageEvent {}

    /** The page is in front for the first time. */
    record Opened(Instant at) implements PageEvent {}

    /** The page in front of this one has closed. */
    record Returned(Instant at) implements PageEvent {}

    /** The program is ending. What a page still asks for is done before the end, but nobody hears what came of it. */
    record Leave(Instant at) implements PageEvent {}

    /** Something the page asked of the world outside is done. */
    record Done(PageEffect.Outcome outcome, Instant at) implements PageEvent {}
}
