// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.log.DrillSession;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A child's weeks of practice: on which days there was a drill.
 *
 * @param weeks oldest first, from the first week with a drill to the week of today, without a gap
 * @param planned days a week that the parent plans, 1 to 7
 */
public record Weeks(List<Week> weeks, int planned) {
    public Weeks {
        weeks = List.copyOf(weeks);
    }

    /**
     * One week.
     *
     * @param monday local day of its Monday, days since 1 January 1970
     * @param days for each day from Monday whether there was a drill
     */
    public record Week(long monday, List<Boolean> days) {
        public Week {
            days = List.copyOf(days);
        }

        /** On how many days there was a drill. */
        public int done() {
            return (int) days.stream().filter(d -> d).count();
        }
    }

    /**
     * The weeks up to today.
     *
     * @param today local day, days since 1 January 1970
     * @param planned days a week that the parent plans, 1 to 7
     */
    public static Weeks of(List<DrillSession> drills, long today, int planned) {
        Set<Long> days = new TreeSet<>();
        drills.stream().map(DrillSession::localDay).filter(d -> d <= today).forEach(days::add);
        List<Week> weeks = new ArrayList<>();
        long first = days.isEmpty() ? FamilyRecord.week(today) : FamilyRecord.week(((TreeSet<Long>) days).first());
        for (long week = first; week <= FamilyRecord.week(today); week++) {
            long monday = 7 * week - 3;
            List<Boolean> done = new ArrayList<>();
            for (int day = 0; day < 7; day++) {
                done.add(days.contains(monday + day));
            }
            weeks.add(new Week(monday, done));
        }
        return new Weeks(weeks, planned);
    }

    /** The newest weeks with the week of today, oldest first, at most {@code most}. */
    public List<Week> newest(int most) {
        return weeks.subList(Math.max(0, weeks.size() - most), weeks.size());
    }

    /**
     * Days of practice a week lately.
     *
     * @return the mean of the last eight whole weeks, 0 to 7; what is planned if there were none
     */
    public double usualDays() {
        List<Week> nine = newest(9);
        List<Week> last = nine.subList(0, Math.max(0, nine.size() - 1));
        return last.isEmpty()
                ? planned
                : last.stream().mapToInt(Week::done).average().orElse(planned);
    }
}
