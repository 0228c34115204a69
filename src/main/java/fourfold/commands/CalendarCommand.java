// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.facts.Operation;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.plain.HomeText;
import fourfold.plain.Signs;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarBeginning;
import fourfold.progress.CalendarEntries;
import fourfold.progress.DateSpan;
import fourfold.progress.Progress;
import fourfold.progress.TableLessons;
import fourfold.records.CalendarJson;
import fourfold.words.CalendarWords;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints the home's calendar of a child, or writes into it. */
@Command(
        name = "calendar",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold calendar --start 2026-09-07 --begin england --child Mina")
final class CalendarCommand implements Callable<Integer> {
    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Option(names = "--start", paramLabel = "${bundle:label.day}")
    private @Nullable String start;

    @Option(names = "--days", paramLabel = "Mon,Tue|4")
    private @Nullable String days;

    @Option(names = "--off", paramLabel = "${bundle:label.span}")
    private List<String> off = List.of();

    @Option(names = "--on", paramLabel = "${bundle:label.span}")
    private List<String> on = List.of();

    @Option(names = "--begin", paramLabel = "progress|england|empty")
    private @Nullable String begin;

    @Option(names = "--table", paramLabel = "${bundle:label.table}", converter = FamilyArgument.TableReader.class)
    private @Nullable Integer table;

    @Option(names = "--multiply", paramLabel = "${bundle:label.week}")
    private @Nullable String multiply;

    @Option(names = "--divide", paramLabel = "${bundle:label.week}")
    private @Nullable String divide;

    @Option(names = "--early", paramLabel = "yes|no")
    private @Nullable String early;

    @Option(names = "--day", paramLabel = "${bundle:label.day}")
    private @Nullable String day;

    @Option(names = "--week", paramLabel = "${bundle:label.day}")
    private @Nullable String week;

    @Option(names = "--note", paramLabel = "${bundle:label.text}")
    private @Nullable String note;

    @Option(names = "--json")
    private boolean json;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() throws IOException {
        try (Home home = app.open()) {
            Child whose = app.child(home, spec);
            Calendar now = home.records().levels(whose).steering().calendar();
            List<ParentAction> entries = entries(now);
            if (!entries.isEmpty()) {
                home.steering().keep(whose, entries, home.moments().now());
            }
            Progress progress = home.records().levels(whose);
            LocalDate today = home.records().today();
            if (json) {
                app.world().out().print(CalendarJson.of(whose.name(), progress.steering(), today));
            } else if (plain) {
                app.world()
                        .out()
                        .print(HomeText.calendar(
                                app.words(home), progress, today, app.world().unicode()));
            } else {
                CalendarWords.lines(app.words(home), progress, today)
                        .forEach(line -> app.world()
                                .out()
                                .println(Signs.printable(line, app.world().unicode())));
            }
            return ExitCode.DONE;
        }
    }

    /** All are read before any is kept. */
    private List<ParentAction> entries(Calendar now) {
        List<ParentAction> entries = new ArrayList<>();
        if (start != null) {
            String text = start;
            entries.add(
                    text.equals("none")
                            ? CalendarEntries.noStart()
                            : CalendarEntries.start(
                                    read(() -> DateSpan.parse(text).first(), "command.calendar.day", text)));
        }
        if (days != null) {
            entries.add(days(days));
        }
        for (String span : off) {
            entries.add(CalendarEntries.off(read(() -> DateSpan.parse(span), "command.calendar.span", span), true));
        }
        for (String span : on) {
            entries.add(CalendarEntries.off(read(() -> DateSpan.parse(span), "command.calendar.span", span), false));
        }
        tables(now, entries);
        if (early != null) {
            if (!List.of("yes", "no").contains(early)) {
                throw refused("command.settings.value", "early", "yes, no", early);
            }
            entries.add(CalendarEntries.early(early.equals("yes")));
        }
        note(entries);
        return entries;
    }

    private ParentAction days(String text) {
        if (text.matches("[1-7]")) {
            return CalendarEntries.days(Integer.parseInt(text));
        }
        return CalendarEntries.days(read(() -> CalendarEntries.namedDays(text), "command.calendar.days", text));
    }

    /** What is kept together has one time and no order: tables are one entry. */
    private void tables(Calendar now, List<ParentAction> entries) {
        Map<Integer, TableLessons> lessons = new TreeMap<>();
        if (begin != null) {
            lessons.putAll(beginning(begin).lessons());
        }
        if (table == null && (multiply != null || divide != null)) {
            throw refused("command.calendar.whichtable");
        }
        if (table != null) {
            if (multiply == null && divide == null) {
                throw refused("command.calendar.whatlesson");
            }
            TableLessons its = lessons.getOrDefault(table, now.lessons(table));
            its = multiply == null ? its : its.with(Operation.MULTIPLY, week(multiply));
            lessons.put(table, divide == null ? its : its.with(Operation.DIVIDE, week(divide)));
        }
        if (!lessons.isEmpty()) {
            needsStart(now, lessons.values().stream().anyMatch(l -> l.multiply() > 0 || l.divide() > 0));
            entries.add(CalendarEntries.tables(lessons));
        }
    }

    private CalendarBeginning beginning(String text) {
        for (CalendarBeginning from : CalendarBeginning.values()) {
            if (from.key().equals(text)) {
                return from;
            }
        }
        throw refused("command.settings.value", "begin", "progress, england, empty", text);
    }

    /** A week has a date only where the year has a start. */
    private void needsStart(Calendar now, boolean dated) {
        boolean started = start == null ? now.start().isPresent() : !start.equals("none");
        if (dated && !started) {
            throw refused("command.calendar.start");
        }
    }

    private int week(String text) {
        if (text.equals("progress")) {
            return TableLessons.BY_PROGRESS;
        }
        if (text.equals("later")) {
            return TableLessons.WHEN_TAUGHT;
        }
        int number = text.matches("\\d{1,3}") ? Integer.parseInt(text) : 0;
        if (number < 1 || number > TableLessons.LAST_WEEK) {
            throw refused("command.calendar.week", TableLessons.LAST_WEEK, text);
        }
        return number;
    }

    private void note(List<ParentAction> entries) {
        if (note == null && day == null && week == null) {
            return;
        }
        String of = day == null ? week : day;
        String text = note;
        if (text == null || of == null || (day != null && week != null)) {
            throw refused("command.calendar.note");
        }
        boolean plain = text.codePoints().noneMatch(Character::isISOControl);
        if (text.codePointCount(0, text.length()) > CalendarEntries.LONGEST_NOTE || !plain) {
            throw refused("command.calendar.longnote", CalendarEntries.LONGEST_NOTE);
        }
        LocalDate on = read(() -> DateSpan.parse(of).first(), "command.calendar.day", of);
        entries.add(CalendarEntries.note(on, day == null, text));
    }

    private <T> T read(Supplier<T> reading, String key, String text) {
        try {
            return reading.get();
        } catch (IllegalArgumentException e) {
            throw refused(key, text);
        }
    }

    private ParameterException refused(String key, Object... gaps) {
        return new ParameterException(spec.commandLine(), app.words().say(key, gaps));
    }
}
