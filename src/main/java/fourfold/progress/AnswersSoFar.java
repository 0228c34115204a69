// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.log.Answer;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import java.time.Duration;
import java.util.Optional;

/**
 * What a child's answers come to, one after the other.
 *
 * @param motor how fast the child's hands are
 * @param memory what it remembers; empty if only the levels were folded
 * @param masteries the levels of its facts
 * @param recent what its last drills were like
 * @param count how many answers there are, of every purpose
 * @param last the newest answer
 */
record AnswersSoFar(
        MotorTime motor,
        Optional<Memory> memory,
        MasteryTable masteries,
        RecentDrills recent,
        long count,
        Optional<Answer> last) {
    /** Of a child who has not begun. */
    static AnswersSoFar none(Memory memory) {
        return new AnswersSoFar(
                MotorTime.unknown(), Optional.of(memory), MasteryTable.UNMET, RecentDrills.NONE, 0, Optional.empty());
    }

    /** With one more that moves the hands and the count alone. */
    AnswersSoFar afterCopy(Answer answer) {
        return new AnswersSoFar(motor.after(answer), memory, masteries, recent, count + 1, Optional.of(answer));
    }

    /** With one more to a question; {@code quick} is the child's limit for a quick answer. */
    AnswersSoFar after(Answer answer, Duration quick) {
        boolean met = masteries.isMet(answer.question().orElseThrow().family());
        return new AnswersSoFar(
                motor.after(answer),
                memory.map(m -> m.after(answer, motor)),
                masteries.after(answer, motor.thinking(answer), quick),
                recent.after(answer, met),
                count + 1,
                Optional.of(answer));
    }
}
