// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.progress.Calendar;
import fourfold.progress.DateSpan;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The days that the calendar's page shows in its line: a week, a single day, or all from one to another.
 *
 * @param day the day; of a week its Monday
 * @param single whether a single day is shown, and not its week
 * @param from the first of several, where a span was begun
 */
record CalendarDays(LocalDate day, boolean single, Optional<LocalDate> from) {
    /** The week in which a day lies. */
    static CalendarDays week(LocalDate day) {
        return new CalendarDays(Calendar.monday(day), false, Optional.empty());
    }

    /** An earlier or later day or week. */
    CalendarDays moved(int by) {
        return new CalendarDays(single ? day.plusDays(by) : day.plusWeeks(by), single, from);
    }

    /** Single days in place of weeks, beginning with today if it lies in the week, or weeks in place of days. */
    CalendarDays turned(LocalDate today) {
        if (single) {
            return new CalendarDays(Calendar.monday(day), false, from);
        }
        return new CalendarDays(Calendar.monday(today).equals(day) ? today : day, true, from);
    }

    /** A span begins here; where one was begun, it is given up. */
    CalendarDays begun() {
        return new CalendarDays(day, single, from.isPresent() ? Optional.empty() : Optional.of(day));
    }

    /** No longer a span. */
    CalendarDays plain() {
        return new CalendarDays(day, single, Optional.empty());
    }

    /** All of its days; a span may be begun at either end. */
    DateSpan span() {
        LocalDate other = from.orElse(day);
        LocalDate later = other.isAfter(day) ? other : day;
        return new DateSpan(other.isAfter(day) ? day : other, single ? later : later.plusDays(6));
    }

    /** Whether all that is shown is off already. */
    boolean isOff(Calendar calendar) {
        if (from.isEmpty() && !single) {
            return calendar.isWeekOff(day);
        }
        DateSpan all = span();
        return all.first().datesUntil(all.last().plusDays(1)).allMatch(calendar::isOff);
    }

    /** What was noted for the day or the week. */
    String note(Calendar calendar) {
        return (single ? calendar.dayLabels() : calendar.weekLabels()).getOrDefault(day, "");
    }
}
