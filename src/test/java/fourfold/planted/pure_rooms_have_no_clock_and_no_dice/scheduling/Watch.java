// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.pure_rooms_have_no_clock_and_no_dice.scheduling;

import java.time.Instant;

/** Breaks the map on purpose: the time is an argument. */
public final class Watch {
    private Watch() {}

    public static Instant look() {
        return Instant.now();
    }
}
