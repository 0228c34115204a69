package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The plan: days done and planned, how far the tables have come, and when all may be fluent. */
record PlanPage(
        Words words,
        Child child,
        Progress progress,
        Weeks weeks,
        Outlook ahead,
        List<Long> played,
        boolean painted,
        int newest)
        implements Page {
    /** How often the way is played through before the range is told; the tenth is then the second of them. */
    static final int RUNS = 20;

    PlanPage {
        played = List.copyOf(played);
    }

    @Override
    public PageResult on(PageEvent event) {
        if (event instanceof PageEvent.Pressed key) {
            return key.key().closes()
                    ? PageResult.of(this, PageEffect.BACK)
                    : PageResult.of(with(played, painted, key.key().scrolled(newest, last(key.columns(), key.rows()))));
        }
        if (event instanceof PageEvent.Painted && !painted) {
            return PageResult.of(with(played, true, newest));
        }
        return event instanceof PageEvent.Tick tick ? tick(tick.at()) : PageResult.of(this);
    }

    /** One more run between two drawings, so that keys are never left waiting for long. */
    private PageResult tick(Instant at) {
        if (!painted || !Outlook.isPossible(progress) || played.size() >= RUNS) {
            return PageResult.of(this);
        }
        List<Long> more = new ArrayList<>(played);
        more.add(ahead.run(played.size()));
        PlanPage next = with(more, painted, newest);
        return more.size() == RUNS
                ? PageResult.of(next, new Remember(child, ahead.projection(more), at))
                : PageResult.of(next);
    }

    private PlanPage with(List<Long> runs, boolean isPainted, int first) {
        return new PlanPage(words, child, progress, weeks, ahead, runs, isPainted, first);
    }

    /** Remembers what it came to for a printed page; if that fails, it is on the screen all the same. */
    record Remember(Child child, Projection projection, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.lookAhead().remember(child, projection, at);
            return new Kept();
        }

        @Override
        public boolean holdsKeys() {
            return false;
        }
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(tall ? 1 : 0, words.say("plan.title", child.name()), Ink.STRONG);
        int width = width(picture.width());
        int x = (picture.width() - width) / 2;
        int y = top(picture.height());
        for (String line : planned(width)) {
            picture.text(x, y++, line, Ink.PLAIN);
        }
        for (String line : projected(width)) {
            picture.text(x, y++, line, Ink.STRONG);
        }
        for (String line : Wrapping.lines(words.say("plan.caution"), width)) {
            picture.text(x, y++, line, Ink.QUIET);
        }
        tables(picture, x, y + (tall ? 1 : 0));
        calendar(picture, isBeside(width) ? x + 42 : x, calendarTop(picture.width(), picture.height()));
        Footer.draw(picture, List.of(words.say("plan.foot").split("   ")));
    }

    private static int width(int columns) {
        return Math.min(76, columns - 2);
    }

    private static int top(int rows) {
        return rows >= 22 ? 3 : 1;
    }

    /** Whether the calendar stands beside the tables. */
    private static boolean isBeside(int width) {
        return width >= 72;
    }

    private int calendarTop(int columns, int rows) {
        int width = width(columns);
        int text = planned(width).size()
                + projected(width).size()
                + Wrapping.lines(words.say("plan.caution"), width).size();
        return top(rows) + text + (rows >= 22 ? 1 : 0) + (isBeside(width) ? 0 : 12);
    }

    /** How many weeks there is room for. */
    private int room(int columns, int rows) {
        return rows - 2 - calendarTop(columns, rows) - 1;
    }

    private int last(int columns, int rows) {
        return Math.max(0, weeks.weeks().size() - Math.max(1, room(columns, rows)));
    }

    private List<String> planned(int width) {
        String planned = words.say(
                "plan.days",
                weeks.planned(),
                progress.steering().settings().minutes(),
                words.number(weeks.usualDays()));
        List<String> lines = new ArrayList<>(Wrapping.lines(planned, width));
        List<String> acts = ActionWords.inForce(words, progress);
        if (!acts.isEmpty()) {
            lines.addAll(Wrapping.lines(String.join(" ", acts), width));
        }
        return lines;
    }

    private List<String> projected(int width) {
        if (!Outlook.isPossible(progress)) {
            return Wrapping.lines(words.say("plan.few", progress.answers()), width);
        }
        if (played.size() < RUNS) {
            return Wrapping.lines(words.say("plan.working", played.size(), RUNS), width);
        }
        Projection projection = ahead.projection(played);
        return Wrapping.lines(
                words.say(
                        "plan.projected", told(projection.middle()), told(projection.early()), told(projection.late())),
                width);
    }

    private String told(Optional<LocalDate> day) {
        return day.map(words::date).orElseGet(() -> words.say("plan.later"));
    }

    private void tables(Picture picture, int x, int top) {
        picture.text(x, top, words.say("plan.tables"), Ink.QUIET);
        int y = top + 1;
        for (TableCount table : TableCount.of(progress)) {
            picture.text(
                    x,
                    y++,
                    words.say(
                            "plan.table",
                            table.table(),
                            table.families(),
                            table.met(),
                            table.accurate(),
                            table.fluent()));
        }
    }

    /** A row for each week, newest first: a full square for a day with a drill, a small one for a day without. */
    private void calendar(Picture picture, int x, int top) {
        int room = room(picture.width(), picture.height());
        if (room <= 0) {
            return;
        }
        picture.text(x, top, words.say("plan.calendar"), Ink.QUIET);
        List<Weeks.Week> all = new ArrayList<>(weeks.weeks());
        Collections.reverse(all);
        int from = Math.min(newest, last(picture.width(), picture.height()));
        for (int i = 0; i < Math.min(room, all.size() - from); i++) {
            Weeks.Week week = all.get(from + i);
            StringBuilder days = new StringBuilder();
            week.days().forEach(done -> days.append(done ? "■ " : "· "));
            picture.text(x, top + 1 + i, days + " " + words.shortDate(LocalDate.ofEpochDay(week.monday())), Ink.PLAIN);
        }
    }
}
