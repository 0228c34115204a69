// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import java.time.LocalDate;
import java.util.Optional;

/**
 * When a goal may be reached, as far as the child's answers so far let one guess: of ten such children, about one is there
 * by {@code early}, five by {@code middle}, nine by {@code late}. It is told as a range only where it closes.
 *
 * @param outcome whether it is reached by {@code until}
 * @param early the 10th percentile; empty if fewer got there in time
 * @param middle the 50th
 * @param late the 90th
 * @param until the last day that was looked at
 * @param daysAWeek on how many days a week there was practice in it
 */
public record Projection(
        Outcome outcome,
        Optional<LocalDate> early,
        Optional<LocalDate> middle,
        Optional<LocalDate> late,
        LocalDate until,
        double daysAWeek) {
    /** Whether a goal is reached in time. */
    public enum Outcome {
        /** Nine of ten are there in time: there is a range to tell. */
        WITHIN_REACH,
        /** Half or more are there in time, and fewer than nine of ten. */
        NOT_SURE,
        /** Fewer than half are there in time. */
        OUT_OF_REACH
    }

    /** Whether there is a range to tell. */
    public boolean isClosed() {
        return outcome == Outcome.WITHIN_REACH;
    }
}
