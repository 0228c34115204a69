// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Family;
import fourfold.home.Home;
import fourfold.insight.FamilyRecord;
import fourfold.insight.FamilyReport;
import fourfold.insight.TraceRecord;
import fourfold.log.Child;
import fourfold.plain.FamilyText;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.screens.Colours;
import fourfold.screens.Columns;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.screens.SquareOfFour;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.AdviceWords;
import fourfold.words.CalendarWords;
import fourfold.words.Stones;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One family in numbers, in one sentence, and with the parent's keys. */
record FamilyPage(SteeringKeys steers, Family family, FamilyRecord record, Instant now, boolean askReset)
        implements KeyPage, Speaking {
    private static final int WIDE = 80;

    /** Reads what is recorded of a family, and makes its page. */
    record Open(Words words, Child child, Family family, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            FamilyRecord record = new FamilyRecord(family);
            home.records().read(child, record);
            SteeringKeys steers = new SteeringKeys(words, child, home.records().standing(child));
            return OpenPage.made(home, new FamilyPage(steers, family, record, at, false));
        }
    }

    @Override
    public Words words() {
        return steers.words();
    }

    @Override
    public List<String> said() {
        FamilyReport told = FamilyReport.of(progress(), steers.stones(), record, family, now);
        List<String> said = new ArrayList<>(List.of(askReset ? words().say("family.reset") : steers.message()));
        FamilyText.sentences(words(), steers.child().name(), told, progress().steering(), true)
                .lines()
                .forEach(said::add);
        return said;
    }

    @Override
    public String keys() {
        return words().say("family.foot");
    }

    private Progress progress() {
        return steers.progress();
    }

    @Override
    public void draw(Picture picture) {
        FamilyReport told = FamilyReport.of(progress(), steers.stones(), record, family, now);
        boolean tall = picture.height() >= 22;
        int y = tall ? 1 : 0;
        picture.centred(
                y,
                words().say("family.title", steers.child().name(), family.low(), family.high(), family.product())
                        + "   " + stones(picture, told.highest())
                        + words().level(told.cell().level()),
                Ink.STRONG);
        y += tall ? 2 : 1;
        SquareOfFour.draw(picture, y, words(), family);
        y += 4;
        y = table(picture, y, told);
        int width = Math.min(WIDE, picture.width() - 4);
        int x = Math.max(1, (picture.width() - width) / 2);
        if (tall) {
            picture.text(x, y, words().say("family.ahead.told"), Ink.QUIET);
            y += 2;
        }
        picture.text(x, y++, plot(width, told.weeks()), Ink.PLAIN);
        for (String line : Wrapping.lines(wrong(told), width)) {
            picture.text(x, y++, line, Ink.PLAIN);
        }
        y += tall ? 1 : 0;
        for (String line : Wrapping.lines(advice(told), width)) {
            picture.text(x, y++, line, Ink.STRONG);
        }
        String line = askReset ? words().say("family.reset") : steers.message();
        int above = Footer.draw(picture, List.of(keys().split("   ")));
        Footer.say(picture, above, line);
    }

    /** A line for each trace; the spread, the level and the due day only where there is room. */
    private int table(Picture picture, int top, FamilyReport told) {
        boolean wide = picture.width() >= WIDE;
        String form = wide ? "%-17s%-10s%-7s%-14s%-12s%-8s%s" : "%-18s%3$-8s%4$-7s%5$-11s%7$s";
        int x = Math.max(0, (picture.width() - (wide ? WIDE : 58)) / 2);
        int y = top;
        picture.text(
                x,
                y++,
                String.format(
                        form,
                        "",
                        words().say("family.level"),
                        words().say("family.right"),
                        wide ? words().say("family.thinking") + " (s)" : words().say("family.thinking.short"),
                        words().say("family.last"),
                        words().say("family.due"),
                        words().say("family.ahead")),
                Ink.QUIET);
        for (FamilyReport.OfTrace trace : told.traces()) {
            picture.text(x, y, row(form, wide, trace));
            picture.text(x, y++, stones(picture, trace.highest()), Colours.of(trace.highest()));
        }
        return y;
    }

    private static String stones(Picture picture, Mastery highest) {
        return Stones.of(highest, picture.unicode()) + " ";
    }

    private String row(String form, boolean wide, FamilyReport.OfTrace told) {
        TraceRecord record = told.record();
        String facts =
                "   " + told.trace().questions().stream().map(words()::asked).collect(Collectors.joining(", "));
        String right = record.asked() == 0 ? "–" : record.right() + "/" + record.asked();
        String thinking = told.median()
                .map(median -> median.toMillis() / 1000.0)
                .map(median -> words().number(median) + (wide ? spread(record, median) : " s"))
                .orElse("–");
        String ahead = told.chances().stream()
                .map(chance -> String.format(Locale.ROOT, "%3d", chance))
                .collect(Collectors.joining(" "));
        return String.format(
                form,
                facts,
                words().level(told.level()),
                right,
                thinking,
                told.lastDay().map(this::day).orElse("–"),
                told.dueDay().map(this::due).orElse("–"),
                ahead.isEmpty() ? "–" : ahead + " %");
    }

    /** The spread of the last times, the median of the newest among them. */
    private String spread(TraceRecord told, double median) {
        return told.thinking()
                .map(s -> " (" + words().number(Math.min(s.low(), median)) + "–"
                        + words().number(Math.max(s.high(), median)) + ")")
                .orElse("");
    }

    private String due(long day) {
        long ahead = day - progress().localDay(now);
        return ahead <= 0 ? words().say("family.now") : words().counted("family.in", (int) ahead, ahead);
    }

    private String day(long day) {
        long ago = progress().localDay(now) - day;
        if (ago <= 0) {
            return words().say("family.today");
        }
        return ago == 1
                ? words().say("family.yesterday")
                : ago < 60 ? words().say("family.ago", ago) : words().shortDate(LocalDate.ofEpochDay(day));
    }

    /** Median thinking time by week, a column for each week, the newest at the right. */
    private String plot(int width, List<TraceRecord.Week> weeks) {
        if (weeks.isEmpty()) {
            return words().say("family.noplot");
        }
        String title = words().say("family.plot");
        double most =
                weeks.stream().mapToDouble(TraceRecord.Week::seconds).max().orElse(1);
        String range = "  " + words().number(most) + " s → "
                + words().number(weeks.get(weeks.size() - 1).seconds()) + " s";
        int columns = Math.max(4, width - title.length() - range.length() - 1);
        return title + " " + Columns.of(weeks, columns, most) + range;
    }

    private String wrong(FamilyReport told) {
        String since = told.begunAgain()
                .map(day -> words().say("family.since", words().date(LocalDate.ofEpochDay(day))) + " ")
                .orElse("");
        if (told.wrong().isEmpty()) {
            return since + words().say("family.nowrong");
        }
        String each = told.wrong().stream()
                .map(w -> words().counted(
                                        "family.wrong",
                                        w.times(),
                                        w.answer().typed(),
                                        words().asked(w.answer().question()),
                                        w.times())
                        + " (" + words().say("wrong." + w.answer().kind().key()) + ")")
                .collect(Collectors.joining(", "));
        return since
                + words().say("family.wrongs", each)
                + (told.mended() == 0 ? "" : " " + words().counted("family.mended", told.mended(), told.mended()));
    }

    private String advice(FamilyReport report) {
        String state = (progress().isHeld(family)
                        ? " " + words().say("family.held")
                        : progress().isFocused(family) ? " " + words().say("family.focused") : "")
                + tables("acts.opened", Set.copyOf(progress().steering().opened()))
                + tables("acts.closed", progress().steering().closed())
                + CalendarWords.taught(words(), progress().steering().calendar(), family).stream()
                        .map(told -> " " + told)
                        .collect(Collectors.joining());
        return AdviceWords.told(words(), report, q -> words().fact(q.fact())) + state;
    }

    /** Which of the family's two tables the parent has opened, or closed. */
    private String tables(String key, Set<Integer> tables) {
        String names = Stream.of(family.low(), family.high())
                .distinct()
                .filter(tables::contains)
                .map(String::valueOf)
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? "" : " " + words().say(key, names);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (askReset) {
            return confirmed(key);
        }
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (key.key().is('r')) {
            return PageResult.of(with(steers, now, true));
        }
        List<Family> one = List.of(family);
        String name = words().name(family);
        if (key.key().is('f')) {
            return PageResult.of(this, steers.focus(one, name, key.at()));
        }
        if (key.key().is('h')) {
            return PageResult.of(this, steers.hold(one, name, key.at()));
        }
        return key.key().is('u') ? PageResult.of(this, steers.undo(key.at())) : PageResult.of(this);
    }

    private PageResult confirmed(PageEvent.Pressed key) {
        return key.key().is(words().say("key.yes").charAt(0))
                ? PageResult.of(with(steers, now, false), steers.reset(List.of(family), words().name(family), key.at()))
                : PageResult.of(with(steers.say(words().say("family.unchanged")), now, false));
    }

    private FamilyPage with(SteeringKeys next, Instant at, boolean asks) {
        return new FamilyPage(next, family, record, at, asks);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return PageResult.of(with(steers.after(outcome), at, askReset));
    }
}
