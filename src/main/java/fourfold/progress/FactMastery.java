// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.log.Answer;
import java.time.Duration;
import java.util.Optional;

/**
 * How well one trace is mastered: counts, the last ten answers from memory, and the level that follows from them.
 *
 * <p>Rules (thresholds in use in classrooms, gathered from Miller and Heward 1992, Intervention in School and Clinic 28,
 * 98–104, and Mercer and Miller 1992; the two-day, three-day and seven-day parts are our own choice):
 *
 * <ul>
 *   <li>accurate: at least 4 of the last 5 right, those answers lying on 2 days or more;
 *   <li>fluent: accurate, and the last 5 right or 9 of the last 10, and the median thinking time of the right ones among
 *       them within the child's limit;
 *   <li>lasting: fluent, on 3 days or more, and it has lasted: once right and within the limit after a rest of 7 days or
 *       more, or, where regular practice leaves no such rest, never below fluent for 28 days or more;
 *   <li>a lapse (an error, or a slow answer that takes the median over the limit) steps one level down, never more at
 *       once; a right and quick answer never lowers a level.
 * </ul>
 *
 * What was said aloud counts as quick or slow in two steps, see {@code memory.HeardPace}. Immutable.
 */
public final class FactMastery implements Meeting {
    /** A trace never met. */
    public static final FactMastery UNMET = new FactMastery();

    private static final long GAP_DAYS = 7;
    private static final long KEPT_DAYS = 28;
    private static final long NEVER = Long.MAX_VALUE;
    private static final int LASTING_DAYS = 3;
    private static final int[] GROWING_GAPS = {1, 2, 4, 8, 16, 30};

    private final RecentAnswers recent;
    private final int asked;
    private final int right;
    private final int shown;
    private final Mastery level;
    private final int fluentDays;
    private final long lastFluentDay;
    private final boolean keptOverAGap;
    private final long fluentSince;
    private final long lastDay;
    private final int gapStep;
    private final boolean lastRight;

    private FactMastery() {
        this(new State());
    }

    private FactMastery(State s) {
        this.recent = s.recent;
        this.asked = s.asked;
        this.right = s.right;
        this.shown = s.shown;
        this.level = s.level;
        this.fluentDays = s.fluentDays;
        this.lastFluentDay = s.lastFluentDay;
        this.keptOverAGap = s.keptOverAGap;
        this.fluentSince = s.fluentSince;
        this.lastDay = s.lastDay;
        this.gapStep = s.gapStep;
        this.lastRight = s.lastRight;
    }

    /**
     * The mastery after one more answer.
     *
     * @param answer an answer to one of the trace's questions
     * @param thinkingTime its thinking time, if it was timed
     * @param limit the child's limit for a quick answer
     */
    public FactMastery after(Answer answer, Optional<Duration> thinkingTime, Duration limit) {
        State s = new State(this);
        s.take(answer, thinkingTime.map(Duration::toMillis).orElse(RecentAnswers.UNTIMED), limit.toMillis());
        return new FactMastery(s);
    }

    /** Many answers to one trace, one after the other; much faster than an object for each. */
    static final class Fold implements Meeting {
        private final State state = new State();

        /**
         * Takes one more answer, as {@link FactMastery#after} does.
         *
         * @param thinkingMillis not a number if it was not timed
         */
        void take(Answer answer, double thinkingMillis, long limitMillis) {
            state.take(
                    answer,
                    Double.isNaN(thinkingMillis) ? RecentAnswers.UNTIMED : Math.round(thinkingMillis),
                    limitMillis);
        }

        @Override
        public boolean isMet() {
            return state.asked > 0 || state.shown > 0;
        }

        @Override
        public boolean isOnlyTried() {
            return FactMastery.isOnlyTried(state.asked, state.right, state.shown);
        }

        /** What they come to; the fold must not be used any more afterwards. */
        FactMastery mastery() {
            return new FactMastery(state);
        }
    }

    /** The level by the rules above. */
    public Mastery level() {
        return level;
    }

    /** Whether it is lasting and has shown so by a rest of 7 days or more. */
    public boolean hasRested() {
        return level == Mastery.LASTING && keptOverAGap;
    }

    @Override
    public boolean isMet() {
        return asked > 0 || shown > 0;
    }

    @Override
    public boolean isOnlyTried() {
        return isOnlyTried(asked, right, shown);
    }

    private static boolean isOnlyTried(int asked, int right, int shown) {
        return asked > 0 && right == 0 && shown <= asked;
    }

    /** Whether it was never in view and each answer from memory was right and usually quick. */
    boolean isKnownUntaught(Duration limit) {
        return asked > 0
                && right == asked
                && shown == 0
                && medianThinking().filter(t -> t.compareTo(limit) <= 0).isPresent();
    }

    /** How often it was asked from memory. */
    public int asked() {
        return asked;
    }

    /** How often the answer from memory was right. */
    public int right() {
        return right;
    }

    /** The local day of the last answer from memory, counted from 1 January 1970; empty if there was none. */
    public Optional<Long> lastDay() {
        return asked == 0 ? Optional.empty() : Optional.of(lastDay);
    }

    /** As {@link #lastDay}, with another day in place of none: no object is made. */
    public long lastDayOr(long other) {
        return asked == 0 ? other : lastDay;
    }

    /**
     * The local day on which it should be asked next by plainly growing gaps: 1, 2, 4, 8, 16, 30 days after the last
     * day, one step further for each day that began right, back to the first after an error. Empty if never asked.
     */
    public Optional<Long> dueDay() {
        return asked == 0 ? Optional.empty() : Optional.of(lastDay + GROWING_GAPS[gapStep]);
    }

    /** Whether that day has come. */
    public boolean isDue(long today) {
        return asked > 0 && lastDay + GROWING_GAPS[gapStep] <= today;
    }

    /**
     * The gap in days that was last bridged with success: the last day's answers were all right, the first of them within
     * the limit, and this many days had passed since the day before. 0 where that is not so or there is no gap yet.
     */
    public long bridged(Duration limit) {
        return asked == 0 ? 0 : recent.bridged(limit.toMillis());
    }

    /** Median thinking time of the right and timed answers among the last ten; empty if there are none. */
    public Optional<Duration> medianThinking() {
        return recent.medianThinking();
    }

    /** How many of the last {@code n} answers from memory (at most ten) were right. */
    public int rightOfLast(int n) {
        return recent.right(n);
    }

    /** How many of the last ten answers are there: 0 to 10. */
    public int recent() {
        return recent.size();
    }

    /** The working copy in which the next mastery is put together. */
    private static final class State {
        private final RecentAnswers recent;
        private int asked;
        private int right;
        private int shown;
        private Mastery level = Mastery.NEW;
        private int fluentDays;
        private long lastFluentDay = Long.MIN_VALUE;
        private boolean keptOverAGap;
        /** Since which day it has not been below fluent. */
        private long fluentSince = NEVER;

        private long lastDay;
        private int gapStep;
        private boolean lastRight;

        State() {
            recent = new RecentAnswers();
        }

        State(FactMastery from) {
            recent = from.recent.copy();
            asked = from.asked;
            right = from.right;
            shown = from.shown;
            level = from.level;
            fluentDays = from.fluentDays;
            lastFluentDay = from.lastFluentDay;
            keptOverAGap = from.keptOverAGap;
            fluentSince = from.fluentSince;
            lastDay = from.lastDay;
            gapStep = from.gapStep;
            lastRight = from.lastRight;
        }

        void take(Answer answer, long thinkingMillis, long limitMillis) {
            Mastery before = level;
            boolean correct = answer.isCorrect();
            level = before == Mastery.NEW ? Mastery.ACQUIRING : before;
            if (!answer.purpose().isFromMemory()) {
                shown += correct ? 1 : 0;
                return;
            }
            long day = answer.localDay();
            if (correct) {
                recent.addRight(RecentAnswers.time(answer, thinkingMillis), day);
            } else {
                recent.addWrong(day);
            }
            boolean first = asked == 0;
            asked++;
            right += correct ? 1 : 0;
            boolean quick = recent.isNewestQuick(limitMillis);
            boolean afterGap = !first && day - lastDay >= GAP_DAYS;
            if (!correct) {
                keptOverAGap = false;
                fluentDays = 0;
            } else if (quick && afterGap && before.atLeast(Mastery.FLUENT)) {
                keptOverAGap = true;
            }
            if (day != lastDay || first) {
                gapStep = correct ? (first ? 0 : Math.min(gapStep + 1, GROWING_GAPS.length - 1)) : 0;
            } else if (!correct) {
                gapStep = 0;
            }
            lastDay = day;
            lastRight = correct;
            level = judge(limitMillis);
            fluentSince = level.atLeast(Mastery.FLUENT) ? Math.min(fluentSince, day) : NEVER;
        }

        private boolean hasLasted() {
            return fluentDays >= LASTING_DAYS && (keptOverAGap || lastDay - KEPT_DAYS >= fluentSince);
        }

        Mastery judge(long limitMillis) {
            int rightOfFive = recent.right(5);
            boolean accurate = rightOfFive >= 4 && recent.isOnTwoDays(5);
            boolean lastFive = rightOfFive == 5;
            boolean nineOfTen = recent.size() >= RecentAnswers.MOST && recent.right(RecentAnswers.MOST) >= 9;
            boolean fluent = accurate
                    && ((lastFive && recent.isMedianWithin(limitMillis, 5))
                            || (nineOfTen && recent.isMedianWithin(limitMillis, RecentAnswers.MOST)));
            if (fluent && lastDay != lastFluentDay) {
                fluentDays++;
                lastFluentDay = lastDay;
            }
            Mastery reached = fluent ? Mastery.FLUENT : accurate ? Mastery.ACCURATE : Mastery.ACQUIRING;
            Mastery earned = fluent && hasLasted() ? Mastery.LASTING : reached;
            boolean quick = recent.isNewestQuick(limitMillis);
            if (earned.atLeast(level) || quick) {
                return earned.atLeast(level) ? earned : level;
            }
            // Being slow can cost fluency, not accuracy: a right answer never makes a trace less than accurate.
            return lastRight && !level.atLeast(Mastery.FLUENT) ? level : level.oneDown();
        }
    }
}
