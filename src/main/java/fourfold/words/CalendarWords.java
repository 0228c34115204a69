package fourfold.words;

import fourfold.facts.Operation;
import fourfold.log.ParentAction;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.TableLessons;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Locale;
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

    /** A day of the week, a name of the language in lower or upper case; empty if it is none. */
    static Optional<DayOfWeek> day(Words words, String name) {
        for (DayOfWeek day : DayOfWeek.values()) {
            if (words.dayName(day).toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT))) {
                return Optional.of(day);
            }
        }
        return Optional.empty();
    }
}
