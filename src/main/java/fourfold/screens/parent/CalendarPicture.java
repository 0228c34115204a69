// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Operation;
import fourfold.progress.Calendar;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.CalendarWords;
import fourfold.words.Words;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The page of the home's calendar, drawn. */
final class CalendarPicture {
    private static final int NAME = 17;
    private static final int CELL = 18;

    private final CalendarPage page;
    private final Words words;
    private final Calendar calendar;

    CalendarPicture(CalendarPage page) {
        this.page = page;
        this.words = page.words();
        this.calendar = page.calendar();
    }

    void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(
                tall ? 1 : 0, words.say("calendar.title", page.steers().child().name()), Ink.STRONG);
        int x = Math.max(1, (picture.width() - 58) / 2);
        int y = tall ? 3 : 1;
        int above = Footer.draw(picture, List.of(page.keys().split("   ")));
        String said =
                page.note().map(n -> words.say("calendar.typing", n + "_")).orElse(help());
        List<String> help = Wrapping.lines(said, Math.min(76, picture.width() - 2));
        // Where the page is low, the list gives way to what is said of its marked line, and moves along with the mark.
        int room = Math.min(page.lines(), above - y - help.size());
        int first = Math.max(0, Math.min(page.chosen() - room / 2, page.lines() - room));
        for (int line = first; line < first + room; line++) {
            picture.text(
                    x,
                    y++,
                    (line == page.chosen() ? "► " : "  ") + row(line),
                    line == page.chosen() ? Ink.STRONG : Ink.PLAIN);
        }
        for (String text : help) {
            picture.centred(y++, text, Ink.PLAIN);
        }
        Footer.say(picture, above, page.steers().message());
    }

    /** The same in sentences: what the last key did, the marked line and its keys, then the whole calendar. */
    List<String> said() {
        List<String> said = new ArrayList<>();
        page.note().ifPresent(n -> said.add(words.say("calendar.typing", n)));
        said.add(page.steers().message());
        said.add(
                page.chosen() < CalendarPage.TABLES
                        ? words.say("spoken.chosen", row(page.chosen()))
                        : words.say("spoken.chosen", words.say("calendar.row.table", page.table())));
        said.add(help());
        said.addAll(CalendarWords.sentences(words, page.steers().progress(), page.today()));
        return said;
    }

    private String row(int line) {
        return switch (line) {
            case CalendarPage.START ->
                name("calendar.row.start")
                        + calendar.start().map(words::date).orElseGet(() -> words.say("calendar.row.none"));
            case CalendarPage.DAYS -> name("calendar.row.days") + days();
            case CalendarPage.WEEK ->
                name(page.days().single() ? "calendar.row.day" : "calendar.row.week") + shownDays();
            case CalendarPage.EARLY ->
                name("calendar.row.early") + words.say("settings.value." + (calendar.early() ? "yes" : "no"));
            default -> {
                int table = page.tables().get(line - CalendarPage.TABLES);
                yield padded(words.say("calendar.row.table", table), NAME)
                        + cell(table, Operation.MULTIPLY, line == page.chosen() && !page.dividing())
                        + cell(table, Operation.DIVIDE, line == page.chosen() && page.dividing());
            }
        };
    }

    private String name(String key) {
        return padded(words.say(key), NAME);
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(1, width - Picture.columns(text)));
    }

    private String days() {
        Set<DayOfWeek> days = calendar.days();
        int count = page.steers().progress().steering().settings().days();
        return days.isEmpty() ? words.counted("calendar.row.perweek", count, count) : CalendarWords.days(words, days);
    }

    /** The week or the day, or all from one to another; whether it is off, its note, and what was practised. */
    private String shownDays() {
        CalendarDays days = page.days();
        Optional<Integer> number =
                days.single() ? Optional.empty() : calendar.week(days.day().plusDays(6));
        List<String> parts = new ArrayList<>();
        parts.add(
                days.from().isPresent()
                        ? CalendarWords.span(words, days.span())
                        : days.single() ? words.namedDate(days.day()) : words.date(days.day()));
        if (days.isOff(calendar)) {
            parts.add(words.say("calendar.row.off"));
        } else {
            number.ifPresent(n -> parts.add(words.say("calendar.week", n)));
        }
        if (!days.note(calendar).isEmpty()) {
            parts.add(words.quoted(days.note(calendar)));
        }
        if (days.single()) {
            calendar.away().getOrDefault(days.day(), Set.of()).stream()
                    .sorted()
                    .forEach(w -> parts.add("● " + words.say("away.kind." + w.key())));
        }
        return String.join("  ", parts);
    }

    private String cell(int table, Operation operation, boolean marked) {
        boolean taught = calendar.taught().containsKey(new Calendar.Lesson(table, operation));
        boolean open = isOpen(table, operation);
        String week = taught
                ? words.say("calendar.row.taught")
                : CalendarWords.week(words, calendar.lessons(table), operation);
        String text = week + (open && !taught ? " ●" : "");
        return padded(words.sign(operation) + (marked ? " ◄" : "  ") + text + (marked ? "►" : ""), CELL);
    }

    /** What the marked line means, in a sentence or two. */
    private String help() {
        return switch (page.chosen()) {
            case CalendarPage.START ->
                CalendarWords.year(words, calendar, page.today()) + " " + words.say("calendar.help.begin");
            case CalendarPage.DAYS -> words.say("calendar.help.days");
            case CalendarPage.WEEK -> words.say(page.days().single() ? "calendar.help.day" : "calendar.help.week");
            case CalendarPage.EARLY ->
                words.say("calendar.help.early")
                        + CalendarWords.waiting(words, page.steers().progress())
                                .map(w -> " " + w)
                                .orElse("");
            default ->
                words.say(
                        helpKey(),
                        page.table(),
                        CalendarWords.lesson(words, calendar, page.table(), page.operation(), page.today()));
        };
    }

    private String helpKey() {
        boolean waits = page.operation() == Operation.MULTIPLY || !isOpen(page.table(), Operation.DIVIDE);
        return "calendar.help." + page.operation().word() + (waits ? "" : ".open");
    }

    private boolean isOpen(int table, Operation operation) {
        return calendar.opens(table, operation)
                .filter(d -> !d.isAfter(page.today()))
                .isPresent();
    }
}
