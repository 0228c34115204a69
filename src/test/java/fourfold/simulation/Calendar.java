// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.LongFunction;

/** The days of one child's time in the benchmark: when it practises, and when it is taught at the family table. */
public interface Calendar {
    /** How many weeks there are, pauses counted. */
    int weeks();

    /** When the drills that are held begin, ascending. */
    List<Instant> drills();

    /** The lessons, ascending. */
    List<Lesson> lessons();

    /** The calendars there are, by name, each made from a child's seed. */
    Map<String, LongFunction<Calendar>> ALL = new TreeMap<>(Map.of(
            "four-days", HomeCalendar::fourDays,
            "two-days", HomeCalendar::twoDays,
            "breaks", HomeCalendar::twoBreaks,
            "summer", HomeCalendar::summer));

    /**
     * The calendar with that name.
     *
     * @throws IllegalArgumentException if there is none
     */
    static LongFunction<Calendar> named(String name) {
        LongFunction<Calendar> found = ALL.get(name);
        if (found == null) {
            throw new IllegalArgumentException(
                    "no calendar is called \"" + name + "\"; there are " + String.join(", ", ALL.keySet()));
        }
        return found;
    }
}
