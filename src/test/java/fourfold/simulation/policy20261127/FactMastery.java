// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

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
 *   <li>lasting: fluent, on 3 days or more, and once right and within the limit after a gap of 7 days or more;
 *   <li>a lapse (an error, or a slow answer that takes the median over the limit) steps one level down, never more at
 *       once; a right and quick answer never lowers a level.
 * </ul>
 *
 * Immutable.
 */
public final class FactMastery {
    /** A trace never met. */
    public static final FactMastery UNMET = new FactMastery();

    private static final long GAP_DAYS = 7;
    private static final int LASTING_DAYS = 3;
    private static final int[] GROWING_GAPS = {1, 2, 4, 8, 16, 30};

    private final RecentAnswers recent;
    private final int asked;
    private final int right;
    private final boolean met;
    private final Mastery level;
    private final int fluentDays;
    private final long lastFluentDay;
    private final boolean keptOverAGap;
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
        this.met = s.met;
        this.level = s.level;
        this.fluentDays = s.fluentDays;
        this.lastFluentDay = s.lastFluentDay;
        this.keptOverAGap = s.keptOverAGap;
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

    /** The level by the rules above. */
    public Mastery level() {
        return level;
    }

    /** Whether it was ever asked or introduced. */
    public boolean isMet() {
        return met;
    }

    /** How often it was asked from memory. */
    public int asked() {
        return asked;
    }

    /** How often the answer from memory was right. */
    public int right() {
        return right;
    }

    /** Whether the last answer from memory was right; false if there was none. */
    public boolean lastRight() {
        return lastRight;
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

    /**
     * The gap in days that was last bridged with success: the last day's answers were all right, the first of them within
     * the limit, and this many days had passed since the day before. 0 where that is not so or there is no gap yet.
     */
    public long bridged(Duration limit) {
        return asked == 0 ? 0 : recent.bridged(limit.toMillis());
    }

    /** The working copy in which the next mastery is put together. */
    private static final class State {
        private final RecentAnswers recent;
        private int asked;
        private int right;
        private boolean met;
        private Mastery level = Mastery.NEW;
        private int fluentDays;
        private long lastFluentDay = Long.MIN_VALUE;
        private boolean keptOverAGap;
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
            met = from.met;
            level = from.level;
            fluentDays = from.fluentDays;
            lastFluentDay = from.lastFluentDay;
            keptOverAGap = from.keptOverAGap;
            lastDay = from.lastDay;
            gapStep = from.gapStep;
            lastRight = from.lastRight;
        }

        void take(Answer answer, long thinkingMillis, long limitMillis) {
            Mastery before = level;
            met = true;
            level = before == Mastery.NEW ? Mastery.ACQUIRING : before;
            if (!answer.purpose().isFromMemory()) {
                return;
            }
            boolean correct = answer.isCorrect();
            long day = answer.localDay();
            if (correct) {
                recent.addRight(thinkingMillis, day);
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
        }

        Mastery judge(long limitMillis) {
            boolean accurate = recent.right(5) >= 4 && recent.isOnTwoDays(5);
            boolean lastFive = recent.size() >= 5 && recent.right(5) == 5;
            boolean nineOfTen = recent.size() >= RecentAnswers.MOST && recent.right(RecentAnswers.MOST) >= 9;
            boolean fluent = accurate
                    && ((lastFive && recent.isMedianWithin(limitMillis, 5))
                            || (nineOfTen && recent.isMedianWithin(limitMillis, RecentAnswers.MOST)));
            if (fluent && lastDay != lastFluentDay) {
                fluentDays++;
                lastFluentDay = lastDay;
            }
            Mastery earned = Mastery.ACQUIRING;
            if (fluent && keptOverAGap && fluentDays >= LASTING_DAYS) {
                earned = Mastery.LASTING;
            } else if (fluent) {
                earned = Mastery.FLUENT;
            } else if (accurate) {
                earned = Mastery.ACCURATE;
            }
            boolean quick = recent.isNewestQuick(limitMillis);
            if (earned.atLeast(level) || quick) {
                return earned.atLeast(level) ? earned : level;
            }
            // Being slow can cost fluency, not accuracy: a right answer never makes a trace less than accurate.
            return lastRight && !level.atLeast(Mastery.FLUENT) ? level : level.oneDown();
        }
    }
}
