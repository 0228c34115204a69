package fourfold.simulation;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The days of one child's school year: four drills a week in the afternoon of Monday, Tuesday, Thursday and Friday, some
 * of them missed, and now and then a lesson at the kitchen table that shows a table's products. All of it hangs on the
 * child's seed alone, never on the policy.
 */
final class Calendar {
    /** How many weeks the year has. */
    static final int WEEKS = 36;

    private static final int[] WEEKDAYS = {0, 1, 3, 4};
    private static final int[] LESSON_TABLES = {2, 5, 10, 3, 4, 6, 7, 8, 9};
    private static final int WEEKS_BETWEEN_LESSONS = 4;
    private static final double MOST_MISSED = 0.15;

    private final boolean[] missed = new boolean[WEEKS * WEEKDAYS.length];
    private final long lateness;

    Calendar(long seed) {
        SplittableRandom dice = new SplittableRandom(seed * 77 + 5);
        double share = dice.nextDouble(0, MOST_MISSED);
        for (int i = 0; i < missed.length; i++) {
            missed[i] = dice.nextDouble() < share;
        }
        missed[0] = false;
        lateness = dice.nextInt(0, 7200);
    }

    /** How many drills the year would have if none were missed. */
    int slots() {
        return missed.length;
    }

    /** When the drill of that slot begins; slots past the year go on in the same rhythm. */
    Instant start(int slot) {
        int week = slot / WEEKDAYS.length;
        long days = 7L * week + WEEKDAYS[slot % WEEKDAYS.length];
        return SchoolYear.START.plus(Duration.ofDays(days).plusHours(15)).plusSeconds(lateness + slot * 61L % 600);
    }

    boolean isMissed(int slot) {
        return missed[slot];
    }

    /** The next slot with a drill after that one, or the one past the year. */
    int following(int slot) {
        int next = slot + 1;
        while (next < missed.length && missed[next]) {
            next++;
        }
        return next;
    }

    /** The facts shown in a lesson two hours before that slot: most slots have none. */
    List<Fact> lessonBefore(int slot) {
        int week = slot / WEEKDAYS.length;
        boolean lesson = slot % WEEKDAYS.length < 2 && week % WEEKS_BETWEEN_LESSONS == 1;
        List<Fact> shown = new ArrayList<>();
        if (lesson) {
            int table = LESSON_TABLES[Math.min(LESSON_TABLES.length - 1, week / WEEKS_BETWEEN_LESSONS)];
            for (Family family : Families.inTable(table)) {
                shown.addAll(family.facts().subList(0, 1));
            }
        }
        return List.copyOf(shown);
    }
}
