// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.log.Answer;
import java.time.Instant;

/** Something that happened, with its time on the program's one monotonic clock. */
public sealed interface Event {
    /** When it happened. */
    Instant at();

    /** Whether a single key made it, other than the one that pauses. */
    default boolean isKey() {
        return this instanceof Digit || this instanceof Stray || this instanceof Enter || this instanceof Erase;
    }

    /** A digit key, 0 to 9. */
    record Digit(int digit, Instant at) implements Event {
        public Digit {
            if (digit < 0 || digit > 9) {
                throw new IllegalArgumentException("a digit is from 0 to 9, not " + digit);
            }
        }
    }

    /**
     * A whole line typed where single keys cannot be seen: up to {@value fourfold.log.Answer#LONGEST_TYPED} digits, or
     * nothing for "show me".
     */
    record Line(String digits, Instant at) implements Event {
        public Line {
            if (digits.length() > Answer.LONGEST_TYPED || !digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
                throw new IllegalArgumentException("a line is at most 4 digits, not \"" + digits + "\"");
            }
        }
    }

    /** A key that means nothing in a drill. */
    record Stray(Instant at) implements Event {}

    /** Backspace. */
    record Erase(Instant at) implements Event {}

    /** Enter. */
    record Enter(Instant at) implements Event {}

    /** Pause; in a pause: stop for today. */
    record Pause(Instant at) implements Event {}

    /** The program is leaving: the terminal closed, or it was asked to end. */
    record Leave(Instant at) implements Event {}

    /** The prompt's picture has left the program; its clock starts. */
    record Painted(Instant at) implements Event {}

    /** Time went by. */
    record Tick(Instant at) implements Event {}
}
