// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A clock that can't be right, or probably is not: the last answer lies ahead of now, or years behind it.
 *
 * @param today the day that the clock says, in UTC
 * @param last the local day of the last answer
 */
public record ClockDoubt(LocalDate today, LocalDate last) {
    /** A zone further west, or a clock put right by some hours, is no reason for doubt. */
    private static final Duration EARLY = Duration.ofHours(26);

    /** Longer than families stay away (our own choice). */
    private static final Duration LONG_AWAY = Duration.ofDays(2 * 365);

    /** The doubt there is; empty if the clock can be right, or there is no answer yet. */
    public static Optional<ClockDoubt> of(Progress progress, Instant now) {
        return progress.lastAnswer()
                .filter(last -> {
                    Duration since = Duration.between(last.askedAt(), now);
                    return since.compareTo(EARLY.negated()) < 0 || since.compareTo(LONG_AWAY) > 0;
                })
                .map(last -> new ClockDoubt(
                        LocalDate.ofEpochDay(Math.floorDiv(now.getEpochSecond(), 86_400L)),
                        LocalDate.ofEpochDay(last.localDay())));
    }
}
