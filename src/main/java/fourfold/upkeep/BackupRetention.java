// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.IsoFields;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * Which days' backups are kept: the newest seven, the newest of each of the last five weeks and of each of the last
 * twenty-four months that have any (common practice, no source).
 *
 * <p>Backups are counted, not aged: on a computer whose clock once stood ten years ahead, going by age would throw away
 * everything.
 */
final class BackupRetention {
    private static final int DAYS = 7;
    private static final int WEEKS = 5;
    private static final int MONTHS = 24;

    private BackupRetention() {}

    /** The days to keep, out of those there are. */
    static Set<LocalDate> kept(Collection<LocalDate> days) {
        List<LocalDate> newestFirst =
                days.stream().distinct().sorted(Comparator.reverseOrder()).toList();
        Set<LocalDate> kept = new HashSet<>();
        newestOfEach(newestFirst, day -> day, DAYS, kept);
        newestOfEach(newestFirst, BackupRetention::week, WEEKS, kept);
        newestOfEach(newestFirst, YearMonth::from, MONTHS, kept);
        return kept;
    }

    private static void newestOfEach(
            List<LocalDate> newestFirst, Function<LocalDate, Object> part, int most, Set<LocalDate> kept) {
        Map<Object, LocalDate> newest = new HashMap<>();
        for (LocalDate day : newestFirst) {
            if (newest.size() < most) {
                newest.putIfAbsent(part.apply(day), day);
            }
        }
        kept.addAll(newest.values());
    }

    /** The week by ISO 8601: Monday to Sunday. */
    private static int week(LocalDate day) {
        return day.get(IsoFields.WEEK_BASED_YEAR) * 100 + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
    }
}
