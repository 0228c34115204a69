// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.log.ActionRecord;
import fourfold.log.AwayPractice;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.ParentAction.CalendarEntry;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What a parent writes into the calendar, as it is kept and read. The parts: {@code start} a day or {@code none};
 * {@code days} such as {@code Mon Tue Thu Fri}, or how many a week; {@code off} and {@code on} a span of days;
 * {@code day} and {@code week} a day and a note, without a note to remove it; {@code tables} such as
 * {@code 7:12/16 8:-/later}; {@code early} {@code yes} or {@code no}.
 */
public final class CalendarEntries {
    /** The longest note for a day or a week, in characters. */
    public static final int LONGEST_NOTE = 60;

    private static final String NONE = "none";

    private CalendarEntries() {}

    /** The first day of the school year. */
    public static CalendarEntry start(LocalDate day) {
        return new CalendarEntry("start", day.toString());
    }

    /** No start any longer. */
    public static CalendarEntry noStart() {
        return new CalendarEntry("start", NONE);
    }

    /** The days of the week with practice, at least one. */
    public static CalendarEntry days(Set<DayOfWeek> days) {
        return new CalendarEntry(
                "days", EnumSet.copyOf(days).stream().map(CalendarEntries::name).collect(Collectors.joining(" ")));
    }

    /** So many days a week, whichever. */
    public static CalendarEntry days(int count) {
        return new CalendarEntry("days", Integer.toString(count));
    }

    /** Days off, or days that were off and are so no longer. */
    public static CalendarEntry off(DateSpan span, boolean isOff) {
        return new CalendarEntry(isOff ? "off" : "on", span.toString());
    }

    /** A note for a day, or for the week in which it lies; an empty one removes what was noted. */
    public static CalendarEntry note(LocalDate day, boolean wholeWeek, String note) {
        LocalDate of = wholeWeek ? Calendar.monday(day) : day;
        return new CalendarEntry(wholeWeek ? "week" : "day", (of + " " + note.strip()).strip());
    }

    /** When tables are taught. */
    public static CalendarEntry tables(Map<Integer, TableLessons> lessons) {
        return new CalendarEntry(
                "tables",
                new TreeMap<>(lessons)
                        .entrySet().stream()
                                .map(e -> e.getKey() + ":" + e.getValue())
                                .collect(Collectors.joining(" ")));
    }

    /** Whether what the child knows may be practised before its date. */
    public static CalendarEntry early(boolean may) {
        return new CalendarEntry("early", may ? "yes" : "no");
    }

    /** Days of the week as a parent writes them, {@code Mon Tue} or {@code mon,tue}; at least one. */
    public static Set<DayOfWeek> namedDays(String text) {
        Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        for (String name : text.strip().split("[ ,]+")) {
            days.add(day(name));
        }
        return days;
    }

    private static DayOfWeek day(String name) {
        for (DayOfWeek day : DayOfWeek.values()) {
            if (name(day).equalsIgnoreCase(name)) {
                return day;
            }
        }
        throw new IllegalArgumentException("no day of the week is called \"" + name + "\"");
    }

    /** The English name in three letters. */
    public static String name(DayOfWeek day) {
        String name = day.name();
        return name.charAt(0) + name.substring(1, 3).toLowerCase(Locale.ROOT);
    }

    /** The tables and weeks of an entry of the part {@code tables}. */
    public static Map<Integer, TableLessons> tables(String text) {
        Map<Integer, TableLessons> tables = new TreeMap<>();
        for (String one : text.split(" ")) {
            int colon = one.indexOf(':');
            if (colon < 1) {
                throw new IllegalArgumentException("a table's weeks are written 7:12/16, not \"" + one + "\"");
            }
            int table = Families.checkTable(Integer.parseInt(one.substring(0, colon)));
            tables.put(table, TableLessons.parse(one.substring(colon + 1)));
        }
        return tables;
    }

    /** What the actions come to, one after the other, oldest first. */
    static final class Fold {
        private Optional<LocalDate> start = Optional.empty();
        private Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        private List<DateSpan> off = List.of();
        private final Map<LocalDate, String> dayLabels = new HashMap<>();
        private final Map<LocalDate, String> weekLabels = new HashMap<>();
        private final Map<Integer, TableLessons> lessons = new HashMap<>();
        private final Map<Calendar.Lesson, LocalDate> taught = new HashMap<>();
        private final Map<LocalDate, Set<AwayPractice>> away = new HashMap<>();
        private boolean early;

        /**
         * Takes one more; what this program does not know, or can't read, changes nothing.
         *
         * @param chosen the child's settings so far; how many days a week are planned is one of them
         */
        void take(ActionRecord record, Map<String, String> chosen) {
            ParentAction action = record.action();
            if (action instanceof ParentAction.Taught lesson) {
                LocalDate day = LocalDate.ofEpochDay(new Moment(record.at(), record.zoneOffsetMinutes()).localDay());
                taught.put(new Calendar.Lesson(lesson.table(), lesson.operation()), day);
            } else if (action instanceof ParentAction.Away practice) {
                away.computeIfAbsent(practice.day(), d -> EnumSet.noneOf(AwayPractice.class))
                        .add(practice.practice());
            } else if (action instanceof ParentAction.Choose choose
                    && choose.setting().equals(Setting.DAYS.key())) {
                days = Set.of();
            } else if (action instanceof CalendarEntry entry) {
                try {
                    take(entry, chosen);
                } catch (IllegalArgumentException unreadable) {
                    // Of a newer program, or written by hand: the calendar stays as it was.
                }
            }
        }

        private void take(CalendarEntry entry, Map<String, String> chosen) {
            String text = entry.text();
            switch (entry.part()) {
                case "start" -> start = text.equals(NONE) ? Optional.empty() : Optional.of(DateSpan.day(text));
                case "days" -> chosen.put(Setting.DAYS.key(), Integer.toString(taken(text)));
                case "off" -> off = DateSpan.parse(text).addedTo(off);
                case "on" -> off = DateSpan.parse(text).takenFrom(off);
                case "day" -> note(dayLabels, text, false);
                case "week" -> note(weekLabels, text, true);
                case "tables" -> tables(text).forEach(this::plan);
                case "early" -> early = text.equals("yes");
                default -> throw new IllegalArgumentException("no part is called " + entry.part());
            }
        }

        private int taken(String text) {
            if (text.length() == 1) {
                int count = Integer.parseInt(text);
                if (count < 1 || count > DayOfWeek.values().length) {
                    throw new IllegalArgumentException("no week has " + count + " days");
                }
                days = Set.of();
                return count;
            }
            days = namedDays(text);
            return days.size();
        }

        private static void note(Map<LocalDate, String> notes, String text, boolean wholeWeek) {
            int blank = text.indexOf(' ');
            LocalDate day = DateSpan.day(blank < 0 ? text : text.substring(0, blank));
            LocalDate of = wholeWeek ? Calendar.monday(day) : day;
            if (blank < 0) {
                notes.remove(of);
            } else {
                notes.put(of, text.substring(blank + 1));
            }
        }

        /** Another week for a lesson is the parent's newer word: that it was taught counts no longer. */
        private void plan(int table, TableLessons planned) {
            TableLessons before = lessons.getOrDefault(table, TableLessons.NONE);
            for (Operation operation : Operation.values()) {
                if (planned.week(operation) != before.week(operation)) {
                    taught.remove(new Calendar.Lesson(table, operation));
                }
            }
            if (planned.equals(TableLessons.NONE)) {
                lessons.remove(table);
            } else {
                lessons.put(table, planned);
            }
        }

        Calendar calendar() {
            Map<LocalDate, Set<AwayPractice>> practised = new HashMap<>();
            away.forEach((day, what) -> practised.put(day, Set.copyOf(what)));
            return new Calendar(start, days, off, dayLabels, weekLabels, lessons, taught, practised, early);
        }
    }
}
