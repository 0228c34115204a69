// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.DrillSoFar;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The lessons of a drill: families whose facts were typed in view, other than to put an error right.
 *
 * @param count how many families were taught
 * @param lastMillis when the last fact of one was shown, milliseconds since 1970; empty if there was no lesson
 */
record Lessons(int count, Optional<Long> lastMillis) {
    static Lessons of(DrillSoFar drill) {
        List<Answer> answers = drill.answers();
        Set<Family> taught = new HashSet<>();
        Optional<Long> last = Optional.empty();
        for (int i = 0; i < answers.size(); i++) {
            Answer shown = answers.get(i);
            boolean puttingRight = i > 0
                    && !answers.get(i - 1).isCorrect()
                    && answers.get(i - 1).question().equals(shown.question());
            if (shown.purpose() == Purpose.INTRODUCE && !puttingRight) {
                taught.add(shown.question().orElseThrow().family());
                last = Optional.of(shown.askedAt().toEpochMilli());
            }
        }
        return new Lessons(taught.size(), last);
    }

    /** How long ago the last was; longer than any drill if there was none. */
    Duration sinceLast(long nowMillis) {
        return lastMillis.map(l -> Duration.ofMillis(nowMillis - l)).orElse(Duration.ofDays(1));
    }
}
