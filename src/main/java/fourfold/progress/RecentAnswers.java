// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.log.Answer;
import fourfold.memory.HeardPace;
import fourfold.memory.Median;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;

/**
 * The last answers from memory to one trace, at most {@value #MOST}: right or wrong, thinking time and local day of each.
 * Plain arrays, because a long log is folded through here; whoever shares one takes a {@link #copy} before adding.
 */
final class RecentAnswers {
    /** The most answers that are looked at. */
    static final int MOST = 10;

    /** In place of milliseconds: a right answer without a time. Longer than every limit. */
    static final long UNTIMED = Integer.MAX_VALUE;

    /** In place of milliseconds: right, and heard to come at once. */
    static final long HEARD_QUICK = -2;

    /** In place of milliseconds: right, and heard to come after thinking; beyond every limit. */
    static final long HEARD_SLOW = Integer.MAX_VALUE - 1;

    private static final int WRONG = -1;

    /** Milliseconds of thinking, newest first. */
    private final int[] thinking;
    /** Local days, counted from 1 January 1970, newest first. */
    private final long[] days;

    /** A bit for each, the newest lowest: set if it was right. */
    private int rights;

    private int size;

    RecentAnswers() {
        this(new int[MOST], new long[MOST]);
    }

    private RecentAnswers(int[] thinking, long[] days) {
        this.thinking = thinking;
        this.days = days;
    }

    /** The time of a right answer as it is added here: measured, or heard in two steps. */
    static long time(Answer answer, long thinkingMillis) {
        if (HeardPace.isQuick(answer)) {
            return HEARD_QUICK;
        }
        return HeardPace.isSlow(answer) ? HEARD_SLOW : thinkingMillis;
    }

    RecentAnswers copy() {
        RecentAnswers copy = new RecentAnswers(thinking.clone(), days.clone());
        copy.rights = rights;
        copy.size = size;
        return copy;
    }

    /** How many answers are there: 0 to {@value #MOST}. */
    int size() {
        return size;
    }

    /**
     * Adds a right answer.
     *
     * @param thinkingMillis its thinking time in milliseconds, {@link #UNTIMED}, {@link #HEARD_QUICK} or {@link #HEARD_SLOW}
     * @param day its local day
     */
    void addRight(long thinkingMillis, long day) {
        add((int) Math.min(UNTIMED, thinkingMillis), day);
    }

    void addWrong(long day) {
        add(WRONG, day);
    }

    private void add(int millis, long day) {
        System.arraycopy(thinking, 0, thinking, 1, MOST - 1);
        System.arraycopy(days, 0, days, 1, MOST - 1);
        thinking[0] = millis;
        days[0] = day;
        rights = (rights << 1) | (millis == WRONG ? 0 : 1);
        size = Math.min(MOST, size + 1);
    }

    /** Whether the newest answer was right and within the limit. */
    boolean isNewestQuick(long limitMillis) {
        return size > 0 && thinking[0] != WRONG && thinking[0] <= limitMillis;
    }

    /** How many of the last {@code n} were right. */
    int right(int n) {
        return Integer.bitCount(rights & ((1 << Math.min(n, MOST)) - 1));
    }

    /** Whether the last {@code n} lie on two days or more; there must be an answer. */
    boolean isOnTwoDays(int n) {
        return days[0] != days[Math.min(size, n) - 1];
    }

    /** The gap of {@link FactMastery#bridged}, in days; there must be an answer. */
    long bridged(long limitMillis) {
        int first = 0;
        while (first + 1 < size && days[first + 1] == days[0]) {
            first++;
        }
        for (int i = 0; i <= first; i++) {
            if (thinking[i] == WRONG) {
                return 0;
            }
        }
        return thinking[first] <= limitMillis && first + 1 < size ? days[0] - days[first + 1] : 0;
    }

    /** Whether the lower median of the timed right answers among the last {@code n} is within the limit. No sorting. */
    boolean isMedianWithin(long limitMillis, int n) {
        int timed = 0;
        int within = 0;
        int last = Math.min(n, size);
        for (int i = 0; i < last; i++) {
            if (thinking[i] != WRONG && thinking[i] != UNTIMED) {
                timed++;
                within += thinking[i] <= limitMillis ? 1 : 0;
            }
        }
        return timed > 0 && within > Median.lowerPlace(timed);
    }

    /** The lower median of the timed right answers, so that it is a time that was really taken; empty without one. */
    Optional<Duration> medianThinking() {
        int[] times = new int[MOST];
        int count = 0;
        for (int i = 0; i < size; i++) {
            if (thinking[i] >= 0 && thinking[i] < HEARD_SLOW) {
                times[count++] = thinking[i];
            }
        }
        if (count == 0) {
            return Optional.empty();
        }
        Arrays.sort(times, 0, count);
        return Optional.of(Duration.ofMillis(times[Median.lowerPlace(count)]));
    }
}
