// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * What is in the answer's place so far, and how it came there.
 *
 * @param typed the digits
 * @param seen when the prompt was shown, and when a key last came
 * @param firstKey from the prompt's paint to the first digit, if it is known
 * @param erasures how often a digit was taken back
 * @param interrupted whether a pause came between, so that nothing is timed any more
 */
public record Entry(String typed, Seen seen, Optional<Duration> firstKey, int erasures, boolean interrupted) {
    /**
     * When the prompt was shown, and when a key last came; at first that is the same.
     *
     * @param shownAt empty until the prompt is painted
     * @param lastKeyAt empty until then
     */
    public record Seen(Optional<Instant> shownAt, Optional<Instant> lastKeyAt) {
        static final Seen NOT_YET = new Seen(Optional.empty(), Optional.empty());

        private Seen keyAt(Instant at) {
            return new Seen(shownAt, Optional.of(at));
        }
    }

    static final Entry EMPTY = new Entry("", Seen.NOT_YET, Optional.empty(), 0, false);

    Entry shown(Instant at) {
        return new Entry(typed, new Seen(Optional.of(at), Optional.of(at)), firstKey, erasures, interrupted);
    }

    Entry typed(String digits, Instant at) {
        Optional<Duration> first = firstKey.isPresent() || interrupted
                ? firstKey
                : seen.shownAt.map(shown -> Drill.atLeastZero(Duration.between(shown, at)));
        return new Entry(digits, seen.keyAt(at), first, erasures, interrupted);
    }

    /** A whole line at once: when its first digit was typed is not known. */
    Entry line(String digits) {
        return new Entry(digits, seen, Optional.empty(), 0, interrupted);
    }

    Entry erased(Instant at) {
        return typed.isEmpty()
                ? new Entry(typed, seen.keyAt(at), firstKey, erasures, interrupted)
                : new Entry(
                        typed.substring(0, typed.length() - 1), seen.keyAt(at), firstKey, erasures + 1, interrupted);
    }

    /** After keys that nobody meant: nothing, and no longer timed. */
    Entry wiped() {
        return new Entry("", Seen.NOT_YET, Optional.empty(), erasures, true);
    }

    /** After a pause, with what was typed: to be painted again, and no longer timed. */
    Entry afterPause() {
        return new Entry(typed, Seen.NOT_YET, Optional.empty(), erasures, true);
    }
}
