package fourfold.screens;

import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import java.time.Instant;

/** A page that hears keys, what came of its wishes, and that it is in front again; time changes nothing on it. */
public interface KeyPage extends Page {
    /** What follows from a key. */
    PageResult pressed(PageEvent.Pressed key);

    /** What follows from what came of a wish. */
    default PageResult done(PageEffect.Outcome outcome, Instant at) {
        return PageResult.of(this);
    }

    /** What follows when the page in front has closed. */
    default PageResult returned(Instant at) {
        return PageResult.of(this);
    }

    @Override
    default PageResult on(PageEvent event) {
        if (event instanceof PageEvent.Pressed key) {
            return pressed(key);
        }
        if (event instanceof PageEvent.Done done) {
            return done(done.outcome(), done.at());
        }
        return event instanceof PageEvent.Returned ? returned(event.at()) : PageResult.of(this);
    }
}
