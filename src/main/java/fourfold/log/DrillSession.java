// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

/**
 * A drill as the log knows it: whose, when it began, and how long it was meant to last.
 *
 * @param id unique across computers
 * @param child whose drill it is
 * @param startedAt when it began, kept to the millisecond
 * @param zoneOffsetMinutes minutes by which local time was ahead of UTC then
 * @param planned the planned length, 1 to 30 minutes
 * @param seed the number that decides every free choice in it
 */
public record DrillSession(UUID id, UUID child, Instant startedAt, int zoneOffsetMinutes, Duration planned, long seed) {
    public DrillSession {
        if (planned.compareTo(Duration.ofMinutes(1)) < 0 || planned.compareTo(Duration.ofMinutes(30)) > 0) {
            throw new InvalidValue(Reason.DRILL_LENGTH, 1, 30, planned.toSeconds());
        }
    }

    /** The day on which it began where the child was, counted from 1 January 1970. */
    public long localDay() {
        return new Moment(startedAt, zoneOffsetMinutes).localDay();
    }
}
