// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.log.ParentAction;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.progress.TableLessons;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What is written into the home's calendar, in plain words. */
public final class CalendarWords {
    private CalendarWords() {}

    /** An action that concerns the calendar, as a list of what was done names it. */
    static String told(Words words, ParentAction action) {
        if (action instanceof ParentAction.Taught taught) {
            return words.say("action.taught." + taught.operation().word(), taught.table());
        } else if (action instanceof ParentAction.Away away) {
            return words.say(
                    "action.practised",
                    words.date(away.day()),
                    words.say("away.kind." + away.practice().key()));
        } else if (action instanceof ParentAction.CalendarEntry entry) {
            try {
                return entry(words, entry.part(), entry.text());
            } catch (IllegalArgumentException unreadable) {
                return words.say("action.choose", entry.part(), entry.text());
            }
        }
        throw new IllegalArgumentException("no words for " + action);
    }

    /** What this program does not know is shown as it was kept. */
    private static String entry(Words words, String part, String text) {
        return switch (part) {
            case "start" ->
                text.equals("none")
                        ? words.say("action.calendar.nostart")
                        : words.say("action.calendar.start", words.date(LocalDate.parse(text)));
            case "days" ->
                words.say(
                        "action.calendar.days",
                        text.length() == 1 ? text : days(words, CalendarEntries.namedDays(text)));
            case "off", "on" -> words.say("action.calendar." + part, span(words, DateSpan.parse(text)));
            case "day", "week" -> note(words, part, text);
            case "tables" -> tables(words, CalendarEntries.tables(text));
            case "early" -> words.say("action.calendar.early." + (text.equals("yes") ? "yes" : "no"));
            default -> words.say("action.choose", part, text);
        };
    }

    private static String note(Words words, String part, String text) {
        int blank = text.indexOf(' ');
        String day = words.date(LocalDate.parse(blank < 0 ? text : text.substring(0, blank)));
        return blank < 0
                ? words.say("action.calendar.nonote." + part, day)
                : words.say(
                        "action.calendar.note." + part, day, words.quoted(SafeText.safe(text.substring(blank + 1))));
    }

    private static String tables(Words words, Map<Integer, TableLessons> tables) {
        if (tables.size() > 1) {
            return words.say("action.calendar.tables", tables.size());
        }
        Map.Entry<Integer, TableLessons> one = tables.entrySet().iterator().next();
        return words.say(
                "action.calendar.table",
                one.getKey(),
                week(words, one.getValue(), Operation.MULTIPLY),
                week(words, one.getValue(), Operation.DIVIDE));
    }

    /** When a table's multiplication or division is taught: a week, by progress, or when the parent says so. */
    public static String week(Words words, TableLessons lessons, Operation operation) {
        int week = lessons.week(operation);
        return week == TableLessons.BY_PROGRESS
                ? words.say("calendar.progress")
                : week == TableLessons.WHEN_TAUGHT ? words.say("calendar.later") : words.say("calendar.week", week);
    }

    /** Days of the week by their short names, Monday first. */
    public static String days(Words words, Set<DayOfWeek> days) {
        return days.stream().sorted().map(words::dayName).collect(Collectors.joining(" "));
    }

    /** Days from one to another, or one day. */
    public static String span(Words words, DateSpan span) {
        return span.first().equals(span.last())
                ? words.date(span.first())
                : words.say("calendar.span", words.date(span.first()), words.date(span.last()));
    }

    /** What the calendar comes to on a day, line by line. */
    public static List<String> lines(Words words, Progress progress, LocalDate today) {
        return lines(words, progress, today, "calendar.table");
    }

    /** The same in sentences. */
    public static List<String> sentences(Words words, Progress progress, LocalDate today) {
        return lines(words, progress, today, "plain.calendar.table");
    }

    private static List<String> lines(Words words, Progress progress, LocalDate today, String tableKey) {
        Calendar calendar = progress.steering().calendar();
        List<String> lines = new ArrayList<>(List.of(year(words, calendar, today)));
        lines.add(practice(words, progress.steering()));
        if (!calendar.off().isEmpty()) {
            lines.add(words.say(
                    "calendar.off",
                    calendar.off().stream().map(span -> span(words, span)).collect(Collectors.joining("; "))));
        }
        for (int table : progress.steering().order()) {
            lines.add(words.say(
                    tableKey,
                    table,
                    lesson(words, calendar, table, Operation.MULTIPLY, today),
                    lesson(words, calendar, table, Operation.DIVIDE, today)));
        }
        calendar.weekLabels()
                .forEach((day, note) ->
                        lines.add(words.say("calendar.note.week", words.date(day), SafeText.safe(note))));
        calendar.dayLabels().forEach((day, note) -> lines.add(words.namedDate(day) + ": " + SafeText.safe(note)));
        calendar.away()
                .forEach((day, what) -> lines.add(words.say(
                        "calendar.away",
                        words.namedDate(day),
                        what.stream()
                                .sorted()
                                .map(w -> words.say("away.kind." + w.key()))
                                .collect(Collectors.joining(", ")))));
        waiting(words, progress).ifPresent(lines::add);
        return lines;
    }

    /** Where the day lies in the school year. */
    public static String year(Words words, Calendar calendar, LocalDate today) {
        if (calendar.start().isEmpty()) {
            return words.say("calendar.nostart");
        }
        String start = words.date(calendar.start().orElseThrow());
        if (today.isBefore(calendar.start().orElseThrow())) {
            return words.say("calendar.before", start);
        }
        return calendar.week(today)
                .map(week -> words.say("calendar.now", start, week))
                .orElseGet(() -> words.say("calendar.weekoff", start));
    }

    private static String practice(Words words, Steering steering) {
        Set<DayOfWeek> days = steering.calendar().days();
        return days.isEmpty()
                ? words.counted(
                        "calendar.perweek",
                        steering.settings().days(),
                        steering.settings().days())
                : words.say("calendar.days", days(words, days));
    }

    /** When a table's multiplication or division is taught, and since when or from when on it is open. */
    public static String lesson(Words words, Calendar calendar, int table, Operation operation, LocalDate today) {
        LocalDate said = calendar.taught().get(new Calendar.Lesson(table, operation));
        if (said != null) {
            return words.say("calendar.taught", words.date(said));
        }
        String week = week(words, calendar.lessons(table), operation);
        return calendar.opens(table, operation)
                .map(day -> words.say(day.isAfter(today) ? "calendar.opens" : "calendar.open", week, words.date(day)))
                .orElse(week);
    }

    /** When the parent said that the family's tables were taught, a sentence each. */
    public static List<String> taught(Words words, Calendar calendar, Family family) {
        List<String> told = new ArrayList<>();
        for (int table : family.low() == family.high() ? List.of(family.low()) : List.of(family.low(), family.high())) {
            for (Operation operation : Operation.values()) {
                LocalDate said = calendar.taught().get(new Calendar.Lesson(table, operation));
                if (said != null) {
                    told.add(words.say("acts.taught." + operation.word(), table, words.date(said)));
                }
            }
        }
        return told;
    }

    /** How many families that were met rest until their date; empty if none does. */
    public static Optional<String> waiting(Words words, Progress progress) {
        int count = (int) Families.all().stream()
                .filter(f -> progress.isMet(f) && progress.isBeforeItsDate(f))
                .count();
        return count == 0 ? Optional.empty() : Optional.of(words.counted("calendar.waiting", count, count));
    }
}
