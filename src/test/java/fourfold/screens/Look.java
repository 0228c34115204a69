package fourfold.screens;

import fourfold.drill.Drill;
import java.util.Optional;

/** Looks behind a page: which drill is going on, as far as it counts. */
public final class Look {
    private Look() {}

    /** The drill of the page in front; empty if it is another page. */
    public static Optional<Drill> drill(Loop loop) {
        return loop.page() instanceof DrillPage page ? Optional.of(page.drill()) : Optional.empty();
    }
}
