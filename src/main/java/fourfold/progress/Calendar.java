// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Operation;
import fourfold.log.AwayPractice;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The home's calendar of one child: when the school year starts, on which days there is school, weeks off, what is taught
 * when. School weeks are counted from the start, from Monday to Sunday, and a week off is not counted: what was planned
 * for it comes in the week after.
 *
 * @param start the first day of the school year; without one no week has a date, and every table goes by progress
 * @param days the days of the week with practice; empty if the parent has named none and only says how many
 * @param off days off, as spans that do not touch, earliest first
 * @param dayLabels what the parent noted for a day
 * @param weekLabels what the parent noted for a week, by its Monday
 * @param lessons when tables are taught; a table that is missing goes by progress
 * @param taught since which day tables were taught, as the parent said
 * @param away what was practised away from the screen, by day
 * @param early whether what the child knows may be practised before its date
 */
public record Calendar(
        Optional<LocalDate> start,
        Set<DayOfWeek> days,
        List<DateSpan> off,
        Map<LocalDate, String> dayLabels,
        Map<LocalDate, String> weekLabels,
        Map<Integer, TableLessons> lessons,
        Map<Lesson, LocalDate> taught,
        Map<LocalDate, Set<AwayPractice>> away,
        boolean early) {
    /** Nothing was written into it. */
    public static final Calendar EMPTY = new Calendar(
            Optional.empty(), Set.of(), List.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), false);

    /** How many weeks of a school year are shown at least (36 is the plan of the homes this is for). */
    public static final int WEEKS = 36;

    /** So many calendar weeks after the start are looked at; nobody plans further. */
    private static final int FARTHEST = 400;

    /** A table's multiplication or its division. */
    public record Lesson(int table, Operation operation) {}

    public Calendar {
        days = Collections.unmodifiableSet(days.isEmpty() ? EnumSet.noneOf(DayOfWeek.class) : EnumSet.copyOf(days));
        off = List.copyOf(off);
        dayLabels = Collections.unmodifiableMap(new TreeMap<>(dayLabels));
        weekLabels = Collections.unmodifiableMap(new TreeMap<>(weekLabels));
        lessons = Collections.unmodifiableMap(new TreeMap<>(lessons));
        taught = Map.copyOf(taught);
        away = Collections.unmodifiableMap(new TreeMap<>(away));
    }

    /** Whether some table goes by a date or by the parent's word, and not by progress. */
    public boolean isFollowed() {
        return !taught.isEmpty()
                || lessons.values().stream()
                        .anyMatch(l -> l.week(Operation.MULTIPLY) == TableLessons.WHEN_TAUGHT
                                || l.week(Operation.DIVIDE) == TableLessons.WHEN_TAUGHT)
                || (start.isPresent() && !lessons.isEmpty());
    }

    /** The Monday of the week in which the day lies. */
    public static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** Whether the day is off, by a span of days off. */
    public boolean isOff(LocalDate day) {
        return off.stream().anyMatch(span -> span.contains(day));
    }

    /**
     * Whether practice is planned for the day: in the school year, not off, and one of the days of the week that were
     * named. Where none were named it can be any day.
     */
    public boolean isSchoolDay(LocalDate day) {
        return start.filter(first -> !day.isBefore(first)).isPresent()
                && !isOff(day)
                && (days.isEmpty() || days.contains(day.getDayOfWeek()));
    }

    /** Whether a whole week is off: every one of its days of practice, or Monday to Friday where none were named. */
    public boolean isWeekOff(LocalDate monday) {
        for (DayOfWeek day : days.isEmpty() ? EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY) : days) {
            if (!isOff(monday.plusDays(day.getValue() - 1L))) {
                return false;
            }
        }
        return true;
    }

    /** The number of the school week in which the day lies, from 1; empty before the start and in a week off. */
    public Optional<Integer> week(LocalDate day) {
        if (start.isEmpty() || day.isBefore(monday(start.get())) || isWeekOff(monday(day))) {
            return Optional.empty();
        }
        LocalDate monday = monday(start.get());
        long weeks = Math.min(FARTHEST, ChronoUnit.WEEKS.between(monday, day));
        int number = 1;
        for (long i = 0; i < weeks; i++) {
            number += isWeekOff(monday.plusWeeks(i)) ? 0 : 1;
        }
        return Optional.of(number);
    }

    /** The day on which a school week begins: its Monday, or the start of the year; empty if the year has no start. */
    public Optional<LocalDate> firstDay(int week) {
        if (start.isEmpty()) {
            return Optional.empty();
        }
        LocalDate monday = monday(start.get());
        int number = 0;
        for (int i = 0; i < FARTHEST; i++) {
            number += isWeekOff(monday.plusWeeks(i)) ? 0 : 1;
            if (number == week) {
                LocalDate first = monday.plusWeeks(i);
                return Optional.of(first.isBefore(start.get()) ? start.get() : first);
            }
        }
        return Optional.empty();
    }

    /** When a table is taught. */
    public TableLessons lessons(int table) {
        return lessons.getOrDefault(table, TableLessons.NONE);
    }

    /** Whether a table's multiplication or division goes by progress: neither a date nor the parent's word opens it. */
    public boolean isByProgress(int table, Operation operation) {
        int week = lessons(table).week(operation);
        return !taught.containsKey(new Lesson(table, operation))
                && (week == TableLessons.BY_PROGRESS || (week > 0 && start.isEmpty()));
    }

    /**
     * From which day on a table's multiplication or division is open: the day on which the parent said that it was taught,
     * or the first day of its week; empty if it goes by progress or is to wait for the parent's word.
     */
    public Optional<LocalDate> opens(int table, Operation operation) {
        LocalDate said = taught.get(new Lesson(table, operation));
        int week = lessons(table).week(operation);
        return said != null ? Optional.of(said) : week > 0 ? firstDay(week) : Optional.empty();
    }
}
