// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.log.AwayPractice;
import fourfold.log.DrillSession;
import fourfold.progress.Calendar;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.progress.Steering;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What today holds for a child, and what was done of it.
 *
 * @param plan what is planned
 * @param away what to practise with away from the screen, where that is planned
 * @param drilled whether there was a drill today
 * @param ticked what was practised away from the screen today
 */
public record Today(Plan plan, Optional<AwayPractice> away, boolean drilled, Set<AwayPractice> ticked) {
    /** What is planned for a day. */
    public enum Plan {
        /** A drill. */
        DRILL,
        /** Practice away from the screen. */
        AWAY,
        /** Nothing: the day or the week is off. */
        OFF,
        /** Nothing: it is none of the days of practice, or this week's days are done. */
        FREE
    }

    public Today {
        ticked = ticked.isEmpty() ? Set.of() : Set.copyOf(ticked);
    }

    /** Whether there was practice today, of whichever kind. */
    public boolean isDone() {
        return drilled || !ticked.isEmpty();
    }

    /**
     * Today.
     *
     * @param drills the drills of the child, those of this week at least
     */
    public static Today of(Steering steering, List<DrillSession> drills, LocalDate today) {
        Calendar calendar = steering.calendar();
        boolean drilled = isDrilled(drills, today);
        Set<AwayPractice> ticked = calendar.away().getOrDefault(today, Set.of());
        Plan plan = plan(steering, drills, today, drilled || !ticked.isEmpty());
        boolean varied = plan == Plan.DRILL && isForVariety(steering, drills, today);
        AwayPractice[] kinds = AwayPractice.values();
        long week = FamilyRecord.week(today.toEpochDay());
        return varied
                ? new Today(
                        Plan.AWAY, Optional.of(kinds[(int) Math.floorMod(week, (long) kinds.length)]), drilled, ticked)
                : new Today(plan, Optional.empty(), drilled, ticked);
    }

    private static boolean isDrilled(List<DrillSession> drills, LocalDate day) {
        return drills.stream().anyMatch(d -> d.localDay() == day.toEpochDay());
    }

    private static Plan plan(Steering steering, List<DrillSession> drills, LocalDate today, boolean done) {
        Calendar calendar = steering.calendar();
        if (calendar.isOff(today)) {
            return Plan.OFF;
        }
        boolean early = calendar.start().filter(today::isBefore).isPresent();
        boolean named = !calendar.days().isEmpty();
        boolean planned = named
                ? calendar.days().contains(today.getDayOfWeek())
                : done
                        || doneThisWeek(steering, drills, today)
                                < steering.settings().days();
        return !early && planned ? Plan.DRILL : Plan.FREE;
    }

    /** On how many days of this week before today something was done. */
    private static int doneThisWeek(Steering steering, List<DrillSession> drills, LocalDate today) {
        int done = 0;
        for (LocalDate day = Calendar.monday(today); day.isBefore(today); day = day.plusDays(1)) {
            boolean away =
                    !steering.calendar().away().getOrDefault(day, Set.of()).isEmpty();
            done += away || isDrilled(drills, day) ? 1 : 0;
        }
        return done;
    }

    /** Whether this is the week's last planned day, and the parent wants that day away from the screen. */
    private static boolean isForVariety(Steering steering, List<DrillSession> drills, LocalDate today) {
        Settings settings = steering.settings();
        if (!settings.value(Setting.VARIETY).equals("weekly")) {
            return false;
        }
        Set<DayOfWeek> days = steering.calendar().days();
        return days.isEmpty()
                ? doneThisWeek(steering, drills, today) == settings.days() - 1
                : today.getDayOfWeek()
                        == EnumSet.copyOf(days).stream().reduce((a, b) -> b).orElseThrow();
    }
}
