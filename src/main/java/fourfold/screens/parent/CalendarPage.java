// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Operation;
import fourfold.log.AwayPractice;
import fourfold.log.ParentAction;
import fourfold.progress.Calendar;
import fourfold.progress.CalendarBeginning;
import fourfold.progress.CalendarEntries;
import fourfold.progress.TableLessons;
import fourfold.screens.KeyPage;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The home's calendar: the start of the school year, the days of practice, days and weeks to mark as off,
 * to note something for or to tick off practice on, and when each table is taught.
 *
 * @param today the day that is called today
 * @param chosen the marked line, from 0
 * @param dividing whether the division of the marked table is chosen, and not its multiplication
 * @param days the week, or the days, that are shown in their line
 * @param note the note that is being typed; empty if none is
 */
record CalendarPage(
        SteeringKeys steers, LocalDate today, int chosen, boolean dividing, CalendarDays days, Optional<String> note)
        implements KeyPage, Speaking {
    static final int START = 0;
    static final int DAYS = 1;
    static final int WEEK = 2;
    static final int EARLY = 3;
    static final int TABLES = 4;

    static CalendarPage of(SteeringKeys steers, LocalDate today) {
        return new CalendarPage(steers, today, START, false, CalendarDays.week(today), Optional.empty());
    }

    @Override
    public Words words() {
        return steers.words();
    }

    Calendar calendar() {
        return steers.progress().steering().calendar();
    }

    List<Integer> tables() {
        return steers.progress().steering().order();
    }

    int lines() {
        return TABLES + tables().size();
    }

    @Override
    public List<String> said() {
        return new CalendarPicture(this).said();
    }

    @Override
    public String keys() {
        return words().say("calendar.foot");
    }

    @Override
    public boolean isTyping() {
        return note.isPresent();
    }

    @Override
    public void draw(Picture picture) {
        new CalendarPicture(this).draw(picture);
    }

    int table() {
        return tables().get(chosen - TABLES);
    }

    Operation operation() {
        return dividing ? Operation.DIVIDE : Operation.MULTIPLY;
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (note.isPresent()) {
            return types(key);
        }
        return switch (key.key().kind()) {
            case UP -> to(Math.floorMod(chosen - 1, lines()), dividing, days);
            case DOWN -> to(Math.floorMod(chosen + 1, lines()), dividing, days);
            case LEFT -> changed(-1, key.at());
            case RIGHT -> changed(1, key.at());
            case ENTER -> turned();
            case DIGIT -> chosen == DAYS ? day(key.key().digit(), key.at()) : PageResult.of(this);
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            default -> letter(key.key(), key.at());
        };
    }

    /** Division in place of multiplication, single days in place of weeks. */
    private PageResult turned() {
        return chosen >= TABLES
                ? to(chosen, !dividing, days)
                : chosen == WEEK ? to(chosen, dividing, days.turned(today)) : PageResult.of(this);
    }

    private PageResult to(int line, boolean divides, CalendarDays shown) {
        return PageResult.of(new CalendarPage(steers.say(""), today, line, divides, shown, note));
    }

    private PageResult letter(Key key, Instant at) {
        if (key.is('u')) {
            return PageResult.of(this, steers.undo(at));
        } else if (key.is('b')) {
            return begin(at);
        } else if (key.is('t') && chosen >= TABLES) {
            String line = words().say("command.taught." + operation().word(), table());
            return PageResult.of(this, steers.keep(new ParentAction.Taught(table(), operation()), at, line));
        }
        return chosen == WEEK ? ofDays(key, at) : PageResult.of(this);
    }

    private PageResult ofDays(Key key, Instant at) {
        if (key.is('o')) {
            CalendarPage next = new CalendarPage(steers, today, chosen, dividing, days.plain(), note);
            return PageResult.of(
                    next,
                    steers.keep(
                            CalendarEntries.off(days.span(), !days.isOff(calendar())),
                            at,
                            words().say("calendar.kept")));
        } else if (key.is('s')) {
            return to(chosen, dividing, days.begun());
        } else if (key.is('n')) {
            return PageResult.of(typing(Optional.of(days.note(calendar()))));
        }
        for (AwayPractice practice : AwayPractice.values()) {
            if (days.single() && key.is(practice.key().charAt(0))) {
                return ticked(practice, at);
            }
        }
        return PageResult.of(this);
    }

    /** Practice away from the screen counts on the day on which it was done. */
    private PageResult ticked(AwayPractice practice, Instant at) {
        String day = words().namedDate(days.day());
        if (days.day().isAfter(today)) {
            String notYet = words().say("calendar.notyet", day);
            return PageResult.of(new CalendarPage(steers.say(notYet), today, chosen, dividing, days, note));
        }
        String line = words().say("command.away.done", day, words().say("away.kind." + practice.key()));
        return PageResult.of(this, steers.keep(new ParentAction.Away(days.day(), practice), at, line));
    }

    private PageResult kept(ParentAction action, Instant at) {
        return PageResult.of(this, steers.keep(action, at, words().say("calendar.kept")));
    }

    /** The next of the three beginnings; the start of the year with it, for weeks need one. */
    private PageResult begin(Instant at) {
        Map<Integer, TableLessons> now = calendar().lessons();
        CalendarBeginning next = isEngland(now)
                ? CalendarBeginning.EMPTY
                : now.equals(CalendarBeginning.EMPTY.lessons())
                        ? CalendarBeginning.PROGRESS
                        : CalendarBeginning.ENGLAND;
        List<ParentAction> actions = new ArrayList<>();
        if (next == CalendarBeginning.ENGLAND && calendar().start().isEmpty()) {
            actions.add(CalendarEntries.start(Calendar.monday(today)));
        }
        actions.add(CalendarEntries.tables(next.lessons()));
        return PageResult.of(this, new Steer(steers.child(), actions, at, words().say("calendar.begun." + next.key())));
    }

    private static boolean isEngland(Map<Integer, TableLessons> now) {
        return CalendarBeginning.ENGLAND.lessons().entrySet().stream()
                .allMatch(e -> now.getOrDefault(e.getKey(), TableLessons.NONE).equals(e.getValue()));
    }

    private PageResult changed(int by, Instant at) {
        return switch (chosen) {
            case START ->
                kept(
                        CalendarEntries.start(
                                calendar().start().map(d -> d.plusWeeks(by)).orElse(Calendar.monday(today))),
                        at);
            case DAYS -> {
                int count = steers.progress().steering().settings().days() + by;
                yield count < 1 || count > 7 ? PageResult.of(this) : kept(CalendarEntries.days(count), at);
            }
            case WEEK -> to(chosen, dividing, days.moved(by));
            case EARLY -> kept(CalendarEntries.early(by > 0), at);
            default -> otherWeek(by, at);
        };
    }

    /** A week earlier or later; before the first week stand by progress and when it is taught. */
    private PageResult otherWeek(int by, Instant at) {
        TableLessons lessons = calendar().lessons(table());
        int week = lessons.week(operation()) + by;
        if (week < TableLessons.WHEN_TAUGHT || week > TableLessons.LAST_WEEK) {
            return PageResult.of(this);
        }
        if (week > 0 && calendar().start().isEmpty()) {
            return PageResult.of(new CalendarPage(
                    steers.say(words().say("calendar.startfirst")), today, chosen, dividing, days, note));
        }
        return kept(CalendarEntries.tables(Map.of(table(), lessons.with(operation(), week))), at);
    }

    /** Monday is 1: a named day more or less. */
    private PageResult day(int number, Instant at) {
        if (number < 1 || number > 7) {
            return PageResult.of(this);
        }
        Set<DayOfWeek> named = EnumSet.noneOf(DayOfWeek.class);
        named.addAll(calendar().days());
        DayOfWeek day = DayOfWeek.of(number);
        if (!named.remove(day)) {
            named.add(day);
        }
        return named.isEmpty() ? PageResult.of(this) : kept(CalendarEntries.days(named), at);
    }

    private CalendarPage typing(Optional<String> text) {
        return new CalendarPage(steers, today, chosen, dividing, days, text);
    }

    private PageResult types(PageEvent.Pressed key) {
        String text = note.orElseThrow();
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(typing(Optional.empty()));
            case ENTER -> {
                ParentAction entry = CalendarEntries.note(days.day(), !days.single(), text);
                yield PageResult.of(
                        typing(Optional.empty()), steers.keep(entry, key.at(), words().say("calendar.kept")));
            }
            default -> PageResult.of(typing(Optional.of(key.key().typedAfter(text, CalendarEntries.LONGEST_NOTE))));
        };
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return PageResult.of(new CalendarPage(steers.after(outcome), today, chosen, dividing, days, note));
    }
}
