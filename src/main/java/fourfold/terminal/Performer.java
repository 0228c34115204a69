// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Duration;
import java.util.concurrent.Future;

/** Does what pages ask of the world outside, in order, on a thread of its own. */
public interface Performer {
    /** Begins something; what it throws, {@link Future#get} throws. */
    Future<PageEffect.Outcome> begin(PageEffect.Outside effect);

    /** Waits at most so long until all that was begun is done. */
    void finish(Duration longest);

    /** What is said while keys wait, without a point at its end. */
    String oneMoment();

    /** What a window says that is too small for any page. */
    String windowTooSmall();
}
