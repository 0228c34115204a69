// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.log.DrillSession;
import fourfold.progress.Calendar;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** When a child's school year starts and ends: by the home's calendar, else from the first drill and every year anew. */
public final class SchoolYears {
    private SchoolYears() {}

    /**
     * The day on which the school year of a day started.
     *
     * @param drills all drills of the child, oldest first
     */
    static LocalDate start(Calendar calendar, List<DrillSession> drills, LocalDate day) {
        LocalDate first = calendar.start()
                .orElseGet(() -> drills.isEmpty()
                        ? day
                        : LocalDate.ofEpochDay(drills.get(0).localDay()));
        long years = Math.max(0, ChronoUnit.YEARS.between(first, day));
        return first.plusYears(years);
    }

    /** The last day of the school year of a day: after its school weeks, weeks off not counted, or after a year. */
    public static LocalDate end(Calendar calendar, List<DrillSession> drills, LocalDate day) {
        LocalDate start = start(calendar, drills, day);
        LocalDate year = start.plusYears(1).minusDays(1);
        LocalDate weeks = calendar.start()
                .filter(start::equals)
                .flatMap(s -> calendar.firstDay(Calendar.WEEKS))
                .map(monday -> monday.plusDays(6))
                .orElse(year);
        return weeks.isBefore(day) || weeks.isAfter(year) ? year : weeks;
    }
}
