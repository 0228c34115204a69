package fourfold.screens.parent;

import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.outlook.Outlook;
import fourfold.outlook.Projection;
import fourfold.progress.Progress;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The plan: days done and planned, how far the tables have come, and when all may be fluent. */
final class PlanPage implements MutablePage {
    /** How often the way is played through before the range is told; the tenth is then the second of them. */
    static final int RUNS = 20;

    private final PageContext context;
    private final Words words;
    private final Child child;
    private final Progress progress;
    private final Weeks weeks;
    private final Outlook ahead;
    private int played;
    private boolean painted;
    private int newest;

    PlanPage(PageContext context, Child child, SessionClock moments) {
        this.context = context;
        this.words = context.words();
        this.child = child;
        this.progress = context.home().records().progress(child);
        Instant now = moments.now();
        this.weeks = Weeks.of(
                context.home().records().sessions(child),
                progress.localDay(now),
                progress.steering().settings().days());
        this.ahead = context.home().lookAhead().from(progress, weeks.usualDays(), now);
    }

    @Override
    public boolean painted(Instant at) {
        painted = true;
        return false;
    }

    /** One more run between two drawings, so that keys are never left waiting for long. */
    @Override
    public boolean tick(Instant at) {
        if (!painted || !Outlook.isPossible(progress) || played >= RUNS) {
            return false;
        }
        ahead.playOnce();
        played++;
        if (played == RUNS) {
            try {
                context.home().lookAhead().remember(child, ahead.projection(), at);
            } catch (RecordsFailure e) {
                // It is on the screen; only a printed page will not tell it.
            }
        }
        return true;
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(tall ? 1 : 0, words.say("plan.title", child.name()), Ink.STRONG);
        int width = Math.min(76, picture.width() - 2);
        int x = (picture.width() - width) / 2;
        int y = tall ? 3 : 1;
        String lately = words.number(weeks.usualDays());
        String planned = words.say(
                "plan.days", weeks.planned(), progress.steering().settings().minutes(), lately);
        for (String line : Wrapping.lines(planned, width)) {
            picture.text(x, y++, line, Ink.PLAIN);
        }
        for (String line : projected(width)) {
            picture.text(x, y++, line, Ink.STRONG);
        }
        for (String line : Wrapping.lines(words.say("plan.caution"), width)) {
            picture.text(x, y++, line, Ink.QUIET);
        }
        y += tall ? 1 : 0;
        boolean beside = width >= 72;
        tables(picture, x, y);
        calendar(picture, beside ? x + 42 : x, beside ? y : y + 12, picture.height() - 2);
        Footer.draw(picture, List.of(words.say("plan.foot").split("   ")));
    }

    private List<String> projected(int width) {
        if (!Outlook.isPossible(progress)) {
            return Wrapping.lines(words.say("plan.few", progress.answers()), width);
        }
        if (played < RUNS) {
            return Wrapping.lines(words.say("plan.working", played, RUNS), width);
        }
        Projection projection = ahead.projection();
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
    private void calendar(Picture picture, int x, int top, int bottom) {
        if (top + 1 >= bottom) {
            return;
        }
        picture.text(x, top, words.say("plan.calendar"), Ink.QUIET);
        List<Weeks.Week> all = new ArrayList<>(weeks.weeks());
        java.util.Collections.reverse(all);
        int room = bottom - top - 1;
        newest = Math.max(0, Math.min(newest, all.size() - room));
        for (int i = 0; i < Math.min(room, all.size() - newest); i++) {
            Weeks.Week week = all.get(newest + i);
            StringBuilder days = new StringBuilder();
            week.days().forEach(done -> days.append(done ? "■ " : "· "));
            picture.text(x, top + 1 + i, days + " " + words.shortDate(LocalDate.ofEpochDay(week.monday())), Ink.PLAIN);
        }
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> newest--;
            case DOWN -> newest++;
            case ESCAPE, ENTER -> {
                return Navigation.BACK;
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }
}
