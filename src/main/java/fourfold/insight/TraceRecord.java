package fourfold.insight;

import fourfold.progress.WrongAnswer;
import java.util.List;
import java.util.Optional;

/**
 * What the log holds of one trace.
 *
 * @param asked answers from memory
 * @param right the right ones among them
 * @param missing those to which nothing was typed
 * @param mended right ones in which a digit was taken back before Enter
 * @param thinking spread of the thinking times of the last {@value TraceRecord#TIMES} right answers, in seconds
 * @param weeks median thinking time of the right answers of each week that had any, oldest first
 * @param wrong the wrong numbers typed, the most frequent first
 */
public record TraceRecord(
        int asked, int right, int missing, int mended, Optional<Spread> thinking, List<Week> weeks, List<Wrong> wrong) {
    /** How many of the newest right answers the spread looks at. */
    public static final int TIMES = 20;

    public TraceRecord {
        weeks = List.copyOf(weeks);
        wrong = List.copyOf(wrong);
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
