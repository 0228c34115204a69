// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.insight.ClockDoubt;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Optional;

/** What is said when there is doubt about the computer's clock. Practice goes on all the same. */
public final class ClockAdvice {
    private ClockAdvice() {}

    /** One line if the last answer lies ahead of now, or years behind it. */
    public static Optional<String> of(Words words, Progress progress, Instant now) {
        return ClockDoubt.of(progress, now).map(doubt -> words.say("clock.odd", doubt.today(), doubt.last()));
    }
}
