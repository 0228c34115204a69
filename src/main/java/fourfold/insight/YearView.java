// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Operation;
import fourfold.log.DrillSession;
import fourfold.progress.Calendar;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A school year at a glance: each of its weeks with its days, each table with its dates, and where the child is in it.
 *
 * @param weeks from the week in which the year starts, without a gap
 * @param tables in the parent's order
 * @param today the day that is looked at
 * @param fluent how many families are fluent
 */
public record YearView(List<Week> weeks, List<OfTable> tables, LocalDate today, int fluent) {
    /** More weeks than this are not shown: a year with every week off that a year can have. Our own choice. */
    private static final int MOST = 60;

    public YearView {
        weeks = List.copyOf(weeks);
        tables = List.copyOf(tables);
    }

    /** What a day is. */
    public enum Day {
        /** There was a drill. */
        DONE,
        /** There was practice away from the screen, and no drill. */
        AWAY,
        /** It was planned, and nothing was done. */
        MISSED,
        /** It is off. */
        OFF,
        /** It is planned and still to come. */
        AHEAD,
        /** Nothing is planned for it, or it need not be this day. */
        FREE
    }

    /**
     * One week.
     *
     * @param monday its Monday
     * @param number its number among the school weeks, from 1; empty in a week off
     * @param days its seven days from Monday
     * @param planned on how many days of it practice is planned
     * @param missed on how many of them it was missed; days made up for on another day are not
     * @param note what the parent wrote for it; empty if nothing
     */
    public record Week(
            LocalDate monday, Optional<Integer> number, List<Day> days, int planned, int missed, String note) {
        public Week {
            days = List.copyOf(days);
        }

        /** On how many days something was done. */
        public int done() {
            return count(Day.DONE) + count(Day.AWAY);
        }

        /** How many days of it are such. */
        public int count(Day kind) {
            return Collections.frequency(days, kind);
        }
    }

    /**
     * A table in the year.
     *
     * @param count how far it has come
     * @param multiply the day from which its multiplication is open; empty if it goes by progress
     * @param divide the same of its division
     */
    public record OfTable(TableCount count, Optional<LocalDate> multiply, Optional<LocalDate> divide) {}

    /**
     * The year in which a day lies.
     *
     * @param progress what the child has reached, under the parent's acts
     * @param drills all drills of the child, oldest first
     */
    public static YearView of(Progress progress, List<DrillSession> drills, LocalDate today) {
        Calendar calendar = progress.steering().calendar();
        Builder builder = new Builder(progress, drills, today);
        LocalDate monday = Calendar.monday(SchoolYears.start(calendar, drills, today));
        List<Week> weeks = new ArrayList<>();
        int school = 0;
        while (weeks.size() < MOST && (school < Calendar.WEEKS || !monday.isAfter(today))) {
            school += calendar.isWeekOff(monday) ? 0 : 1;
            weeks.add(builder.week(monday, calendar.isWeekOff(monday) ? Optional.empty() : Optional.of(school)));
            monday = monday.plusWeeks(1);
        }
        List<OfTable> tables = TableCount.of(progress).stream()
                .map(t -> new OfTable(
                        t, calendar.opens(t.table(), Operation.MULTIPLY), calendar.opens(t.table(), Operation.DIVIDE)))
                .toList();
        return new YearView(weeks, tables, today, (int) progress.families(Mastery.FLUENT));
    }

    /** The week of today; empty if the year has not begun, or was over long ago. */
    public Optional<Week> thisWeek() {
        return weeks.stream()
                .filter(w -> w.monday().equals(Calendar.monday(today)))
                .findFirst();
    }

    /** How many school weeks the year has. */
    public int schoolWeeks() {
        return (int) weeks.stream().filter(w -> w.number().isPresent()).count();
    }

    /** On how many days something was done so far. */
    public int done() {
        return weeks.stream().mapToInt(Week::done).sum();
    }

    /** On how many planned days nothing was done so far, and was not made up for in the same week. */
    public int missed() {
        return weeks.stream().mapToInt(Week::missed).sum();
    }

    /** The last day of the year that is shown. */
    public LocalDate end() {
        return weeks.get(weeks.size() - 1).monday().plusDays(6);
    }

    /** The lesson that comes next by its date, or empty. */
    public Optional<Map.Entry<LocalDate, String>> next() {
        Map<LocalDate, String> coming = new java.util.TreeMap<>();
        for (OfTable table : tables) {
            table.multiply()
                    .filter(day -> day.isAfter(today))
                    .ifPresent(day -> coming.merge(day, "×" + table.count().table(), (a, b) -> a + ", " + b));
            table.divide()
                    .filter(day -> day.isAfter(today))
                    .ifPresent(day -> coming.merge(day, "÷" + table.count().table(), (a, b) -> a + ", " + b));
        }
        return coming.entrySet().stream().findFirst();
    }

    /** Puts weeks together. */
    private static final class Builder {
        private final Calendar calendar;
        private final int plannedAWeek;
        private final Set<Long> drilled;
        private final LocalDate today;

        Builder(Progress progress, List<DrillSession> drills, LocalDate today) {
            this.calendar = progress.steering().calendar();
            this.plannedAWeek = progress.steering().settings().days();
            this.drilled = drills.stream().map(DrillSession::localDay).collect(Collectors.toSet());
            this.today = today;
        }

        Week week(LocalDate monday, Optional<Integer> number) {
            List<Day> days = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                days.add(day(monday.plusDays(i)));
            }
            Map<Day, Integer> counts = new EnumMap<>(Day.class);
            days.forEach(d -> counts.merge(d, 1, Integer::sum));
            int done = counts.getOrDefault(Day.DONE, 0) + counts.getOrDefault(Day.AWAY, 0);
            int planned = planned(monday);
            boolean over = monday.plusDays(6).isBefore(today);
            int missed = over
                    ? Math.max(0, planned - done)
                    : Math.min(counts.getOrDefault(Day.MISSED, 0), Math.max(0, planned - done));
            // A day that was made up for on another day of the week is no longer a missed one.
            for (int i = 0, left = missed; i < 7; i++) {
                if (days.get(i) == Day.MISSED && left-- <= 0) {
                    days.set(i, Day.FREE);
                }
            }
            // Where only a number of days is planned, those to come are shown on the first days that are left.
            for (int i = 0, left = calendar.days().isEmpty() && !over ? planned - done : 0; i < 7 && left > 0; i++) {
                if (days.get(i) == Day.FREE && !monday.plusDays(i).isBefore(today) && isInYear(monday.plusDays(i))) {
                    days.set(i, Day.AHEAD);
                    left--;
                }
            }
            String note = calendar.weekLabels().getOrDefault(monday, "");
            return new Week(monday, number, days, planned, missed, note);
        }

        private int planned(LocalDate monday) {
            if (!calendar.days().isEmpty()) {
                return (int) calendar.days().stream()
                        .map(d -> monday.plusDays(d.getValue() - 1L))
                        .filter(d -> !calendar.isOff(d) && isInYear(d))
                        .count();
            }
            int open = 0;
            for (int i = 0; i < 7; i++) {
                open += calendar.isOff(monday.plusDays(i)) || !isInYear(monday.plusDays(i)) ? 0 : 1;
            }
            return calendar.isWeekOff(monday) ? 0 : Math.min(plannedAWeek, open);
        }

        private boolean isInYear(LocalDate day) {
            return calendar.start().filter(day::isBefore).isEmpty();
        }

        private Day day(LocalDate day) {
            if (drilled.contains(day.toEpochDay())) {
                return Day.DONE;
            }
            if (!calendar.away().getOrDefault(day, Set.of()).isEmpty()) {
                return Day.AWAY;
            }
            if (calendar.isOff(day)) {
                return Day.OFF;
            }
            boolean planned =
                    !calendar.days().isEmpty() && calendar.days().contains(day.getDayOfWeek()) && isInYear(day);
            if (!planned) {
                return Day.FREE;
            }
            return day.isBefore(today) ? Day.MISSED : Day.AHEAD;
        }
    }
}
