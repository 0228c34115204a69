// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import fourfold.drill.Drill;
import fourfold.screens.child.DrillPage;
import java.util.Optional;

/** Looks behind a page: which drill is going on, as far as it counts. */
public final class Look {
    private Look() {}

    /** Whether the page in front waits for anything in the world outside. */
    public static boolean isWaiting(PageLoop loop) {
        return loop.isWaiting();
    }

    /** Gives a session the colours of a theme. */
    public static void dress(TerminalSession session, Theme theme) {
        session.with(theme);
    }

    /** The drill of the page in front; empty if it is another page. */
    public static Optional<Drill> drill(PageLoop loop) {
        return loop.page() instanceof DrillPage page ? Optional.of(page.drill()) : Optional.empty();
    }
}
