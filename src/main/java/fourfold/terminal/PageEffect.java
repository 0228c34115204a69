// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Duration;
import java.util.OptionalInt;

/** What a page wants to be done. */
public sealed interface PageEffect {
    /** Back to the page behind. */
    PageEffect BACK = new Back();

    /** Back to the first page, past all between. */
    PageEffect FIRST = new First();

    /** Leave the program. */
    PageEffect LEAVE = new LeaveProgram();

    /** Back to the page behind this one; from the last page, out of the program. */
    record Back() implements PageEffect {}

    /** Back to the first page. */
    record First() implements PageEffect {}

    /** Leave the program. */
    record LeaveProgram() implements PageEffect {}

    /** Open a page in front of this one. */
    record Open(Page page) implements PageEffect {}

    /** Put a page in this one's place. */
    record Replace(Page page) implements PageEffect {}

    /** Keys pressed before the drawing that has just left the program belong to nothing. */
    record DropEarlierKeys() implements PageEffect {}

    /** Wait at most so long until what was asked of the world outside is done: for a program about to stand still. */
    record Settle(Duration longest) implements PageEffect {}

    /** Something in the world outside, done by the loop's {@link Performer}; what came of it is {@link PageEvent.Done}. */
    non-sealed interface Outside extends PageEffect {
        /** Whether keys wait their turn until it is done; if not, the page hears them meanwhile. */
        default boolean holdsKeys() {
            return true;
        }

        /** How far it has come, 0 to 100; empty if it does not say. Any thread may ask. */
        default OptionalInt percent() {
            return OptionalInt.empty();
        }
    }

    /**
     * Something to be worked out from values alone, which may take seconds: on a thread of its own, so that neither keys nor
     * the file wait for it. Nobody waits for its end when the program is left.
     */
    interface Calculation extends Outside {
        /** Works it out, whatever thread this is. */
        Outcome result();

        @Override
        default boolean holdsKeys() {
            return false;
        }
    }

    /** What came of something in the world outside. */
    interface Outcome {}
}
