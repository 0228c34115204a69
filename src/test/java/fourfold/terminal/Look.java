package fourfold.terminal;

import fourfold.drill.Drill;
import fourfold.screens.child.DrillPage;
import java.util.Optional;

/** Looks behind a page: which drill is going on, as far as it counts. */
public final class Look {
    private Look() {}

    /** Whether keys wait until something in the world outside is done. */
    public static boolean isHeld(PageLoop loop) {
        return loop.isHeld();
    }

    /** The drill of the page in front; empty if it is another page. */
    public static Optional<Drill> drill(PageLoop loop) {
        return loop.page() instanceof DrillPage page ? Optional.of(page.drill()) : Optional.empty();
    }
}
