// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import fourfold.log.Answer;
import fourfold.log.DrillSession;

/** What the world must do before the next state counts. */
public sealed interface Effect {
    /** Keep that a drill began. */
    record Begin(DrillSession session) implements Effect {}

    /** Keep an answer for good. */
    record Keep(Answer answer) implements Effect {}
}
