// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.log.Answer;
import fourfold.progress.WrongAnswer;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the log holds of one trace.
 *
 * @param answers how many answers from memory came out how; what never happened is not named
 * @param thinking spread of the thinking times of the last {@value TraceRecord#TIMES} right answers, in seconds
 * @param weeks median thinking time of the right answers of each week that had any, oldest first
 * @param wrong the wrong numbers typed, the most frequent first
 */
public record TraceRecord(
        Map<Outcome, Integer> answers, Optional<Spread> thinking, List<Week> weeks, List<Wrong> wrong) {
    /** How many of the newest right answers the spread looks at. */
    public static final int TIMES = 20;

    /** How an answer came out. */
    public enum Outcome {
        /** Right as typed. */
        RIGHT,
        /** Right, and a digit was taken back before Enter. */
        MENDED,
        /** Another number was typed. */
        WRONG,
        /** Nothing was typed. */
        MISSING;

        static Outcome of(Answer answer) {
            if (answer.isMissing()) {
                return MISSING;
            }
            if (!answer.isCorrect()) {
                return WRONG;
            }
            return WrongAnswer.isMended(answer) ? MENDED : RIGHT;
        }
    }

    public TraceRecord {
        answers = Map.copyOf(answers);
        weeks = List.copyOf(weeks);
        wrong = List.copyOf(wrong);
    }

    /** Answers from memory. */
    public int asked() {
        return answers.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** The right ones among them. */
    public int right() {
        return count(Outcome.RIGHT) + mended();
    }

    /** The right ones in which a digit was taken back before Enter. */
    public int mended() {
        return count(Outcome.MENDED);
    }

    /** Those to which nothing was typed. */
    public int missing() {
        return count(Outcome.MISSING);
    }

    private int count(Outcome outcome) {
        return answers.getOrDefault(outcome, 0);
    }

    /**
     * The right answers of one week.
     *
     * @param week weeks since Monday, 29 December 1969
     * @param seconds median thinking time
     */
    public record Week(long week, double seconds) {}

    /**
     * A wrong number that was typed.
     *
     * @param answer what it looks like
     * @param times how often it came
     * @param lastDay local day on which it came last, days since 1 January 1970
     */
    public record Wrong(WrongAnswer answer, int times, long lastDay) {}
}
