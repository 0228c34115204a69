// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.log.RecordsFailure;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import java.time.Instant;

/** A page that hears keys, what came of its wishes, and that it is in front again; time changes nothing on it. */
public interface KeyPage extends Page {
    /** What follows from a key. */
    PageResult pressed(PageEvent.Pressed key);

    /** What follows from what came of a wish: a page that was made is opened. */
    default PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Made made) {
            return PageResult.of(this, new PageEffect.Open(made.page()));
        }
        return PageResult.of(outcome instanceof HomeEffect.Failed failed ? failed(failed.failure()) : this);
    }

    /** The page after a wish that failed. */
    default Page failed(RecordsFailure failure) {
        return this;
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
