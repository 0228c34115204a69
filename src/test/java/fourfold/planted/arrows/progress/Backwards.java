// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.progress;

import fourfold.scheduling.Scheduler;

/** Breaks the map on purpose: progress does not know scheduling. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Scheduler it) {
        return it != null;
    }
}
