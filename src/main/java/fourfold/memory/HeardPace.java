// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import fourfold.log.Answer;

/**
 * What the pace of an answer said aloud means: the one place. A grown-up heard it come at once or after thinking; nobody
 * measured it. It is taken in two steps about the child's limit: quick as half of it, slow as twice of it (our own choice).
 * Right and wrong count as of any answer; medians, trends and how fast the child usually is are made of measured times
 * alone.
 */
public final class HeardPace {
    private static final double QUICK = 0.5;
    private static final double SLOW = 2;

    private HeardPace() {}

    /** Whether the answer was right and heard to come at once. */
    public static boolean isQuick(Answer answer) {
        return answer.isCorrect()
                && answer.pace().filter(Answer.Pace.QUICK::equals).isPresent();
    }

    /** Whether the answer was right and heard to come after thinking. */
    public static boolean isSlow(Answer answer) {
        return answer.isCorrect()
                && answer.pace().filter(Answer.Pace.SLOW::equals).isPresent();
    }

    /**
     * Seconds of thinking that such an answer stands for.
     *
     * @param limit seconds within which an answer of this child is quick
     */
    static double seconds(Answer answer, double limit) {
        return isQuick(answer) ? QUICK * limit : SLOW * limit;
    }
}
