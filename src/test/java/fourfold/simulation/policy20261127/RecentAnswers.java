// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation.policy20261127;

/**
 * The last answers from memory to one trace, at most {@value #MOST}: right or wrong, thinking time and local day of each.
 * Plain arrays, because a long log is folded through here; whoever shares one takes a {@link #copy} before adding.
 */
final class RecentAnswers {
    /** The most answers that are looked at. */
    static final int MOST = 10;

    /** In place of milliseconds: a right answer without a time. Longer than every limit. */
    static final long UNTIMED = Integer.MAX_VALUE;

    private static final int WRONG = -1;

    /** Milliseconds of thinking, newest first. */
    private final int[] thinking;
    /** Local days, counted from 1 January 1970, newest first. */
    private final long[] days;

    private int size;

    RecentAnswers() {
        this(new int[MOST], new long[MOST], 0);
    }

    private RecentAnswers(int[] thinking, long[] days, int size) {
        this.thinking = thinking;
        this.days = days;
        this.size = size;
    }

    RecentAnswers copy() {
        return new RecentAnswers(thinking.clone(), days.clone(), size);
    }

    /** How many answers are there: 0 to {@value #MOST}. */
    int size() {
        return size;
    }

    /**
     * Adds a right answer.
     *
     * @param thinkingMillis its thinking time in milliseconds, or {@link #UNTIMED}
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
        size = Math.min(MOST, size + 1);
    }

    /** Whether the newest answer was right and within the limit. */
    boolean isNewestQuick(long limitMillis) {
        return size > 0 && thinking[0] != WRONG && thinking[0] <= limitMillis;
    }

    /** How many of the last {@code n} were right. */
    int right(int n) {
        int count = 0;
        for (int i = 0; i < Math.min(n, size); i++) {
            count += thinking[i] == WRONG ? 0 : 1;
        }
        return count;
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
        for (int i = 0; i < Math.min(n, size); i++) {
            if (thinking[i] != WRONG && thinking[i] != UNTIMED) {
                timed++;
                within += thinking[i] <= limitMillis ? 1 : 0;
            }
        }
        return timed > 0 && within > Median.lowerPlace(timed);
    }
}
