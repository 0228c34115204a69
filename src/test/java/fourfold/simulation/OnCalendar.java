// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;
import java.util.function.LongFunction;

/** Children of a kind on another calendar than their own; their name has the calendar's behind it. */
record OnCalendar(SimulatedLearnerKind kind, String days, LongFunction<Calendar> calendars)
        implements SimulatedLearnerKind {
    @Override
    public String name() {
        return kind.name() + "@" + days;
    }

    @Override
    public SimulatedLearner create(long seed) {
        return kind.create(seed);
    }

    @Override
    public Calendar calendar(long seed) {
        return calendars.apply(seed);
    }

    /**
     * Every kind on each calendar of these names; on their own where none is named.
     *
     * @throws IllegalArgumentException if there is no calendar of a name
     */
    static List<SimulatedLearnerKind> each(List<SimulatedLearnerKind> kinds, List<String> calendars) {
        if (calendars.isEmpty()) {
            return kinds;
        }
        return calendars.stream()
                .<SimulatedLearnerKind>flatMap(
                        name -> kinds.stream().map(kind -> new OnCalendar(kind, name, Calendar.named(name))))
                .toList();
    }
}
