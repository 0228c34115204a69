// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.time.Instant;

/**
 * When something was, and what the clock on the wall said then.
 *
 * @param at the instant; kept to the millisecond
 * @param zoneOffsetMinutes minutes by which local time was ahead of UTC then, −1080 to 1080
 */
public record Moment(Instant at, int zoneOffsetMinutes) {
    /** The most minutes that a zone can be from UTC. */
    private static final int FARTHEST_ZONE = 18 * 60;

    public Moment {
        if (zoneOffsetMinutes < -FARTHEST_ZONE || zoneOffsetMinutes > FARTHEST_ZONE) {
            throw new InvalidValue(Reason.ZONE, FARTHEST_ZONE, zoneOffsetMinutes);
        }
    }

    /** The local day, counted from 1 January 1970. */
    public long localDay() {
        return Math.floorDiv(at.getEpochSecond() + zoneOffsetMinutes * 60L, 86_400L);
    }
}
