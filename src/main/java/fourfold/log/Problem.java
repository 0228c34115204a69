// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.List;

/**
 * A reason with what belongs to it.
 *
 * @param reason the reason
 * @param details what fills the gaps of its text: names, numbers, or another problem; no control characters
 */
public record Problem(Reason reason, List<Object> details) {
    public Problem {
        details = List.copyOf(details);
    }

    /** With these details. */
    public static Problem of(Reason reason, Object... details) {
        return new Problem(reason, List.of(details));
    }

    /** Technical and short; what a person reads comes from the texts. */
    @Override
    public String toString() {
        return details.isEmpty() ? reason.name() : reason + " " + details;
    }
}
