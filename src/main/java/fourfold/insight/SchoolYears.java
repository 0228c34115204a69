package fourfold.insight;

import fourfold.log.DrillSession;
import java.time.LocalDate;
import java.util.List;

/** When a child's school year begins and ends where no calendar says it: from its first drill, and every year anew. */
public final class SchoolYears {
    private SchoolYears() {}

    /**
     * The local day on which the school year of that day began.
     *
     * @param drills all drills of the child, oldest first
     * @param day local day, days since 1 January 1970
     */
    public static long start(List<DrillSession> drills, long day) {
        LocalDate first = LocalDate.ofEpochDay(
                drills.isEmpty() ? day : Math.min(day, drills.get(0).localDay()));
        long years = java.time.temporal.ChronoUnit.YEARS.between(first, LocalDate.ofEpochDay(day));
        return first.plusYears(years).toEpochDay();
    }

    /** The last local day of the school year of that day. */
    public static long end(List<DrillSession> drills, long day) {
        return LocalDate.ofEpochDay(start(drills, day))
                .plusYears(1)
                .minusDays(1)
                .toEpochDay();
    }
}
