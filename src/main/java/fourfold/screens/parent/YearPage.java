// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.insight.Today;
import fourfold.insight.YearView;
import fourfold.log.Child;
import fourfold.plain.YearText;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import fourfold.words.YearWords;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** The year at a glance: a column for each week, a row for each day of the week, and the tables with their dates. */
record YearPage(Words words, Child child, YearView year, Today today) implements KeyPage, Speaking {
    private static final int NUMBERED = 5;
    private static final int WIDE = 74;

    /** Reads the year, and makes the page. */
    record Open(Words words, Child child, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            LocalDate day = LocalDate.ofInstant(at, home.moments().zone());
            return OpenPage.made(
                    home,
                    new YearPage(
                            words,
                            child,
                            home.records().year(child, day),
                            home.records().today(child, day)));
        }
    }

    @Override
    public List<String> said() {
        return YearText.sentences(words, child.name(), year, today, true)
                .lines()
                .toList();
    }

    @Override
    public String keys() {
        return words.say("year.foot");
    }

    @Override
    public boolean isOnlyRead() {
        return true;
    }

    @Override
    public void draw(Picture picture) {
        int width = Math.min(WIDE, picture.width() - 2);
        int x = (picture.width() - width) / 2;
        int y = picture.height() >= 22 ? 1 : 0;
        picture.centred(y++, words.say("year.title", child.name()), Ink.STRONG);
        for (String line : Wrapping.lines(YearWords.where(words, year), width)) {
            picture.text(x, y++, line, Ink.STRONG);
        }
        picture.text(x, y++, TodayWords.forParent(words, today), Ink.PLAIN);
        y = weeks(picture, x, y);
        for (String line : Wrapping.lines(words.say("year.legend"), width)) {
            picture.text(x, y++, line, Ink.QUIET);
        }
        tables(picture, x, y, width);
        Footer.draw(picture, List.of(keys().split("   ")));
    }

    private int weeks(Picture picture, int x, int top) {
        String[] names = words.say("year.days").split(" ");
        List<YearView.Week> weeks = year.weeks();
        int room = picture.width() - x - 4;
        int first = Math.max(0, Math.min(weeks.size() - room, thisWeek() - room / 2));
        for (int day = 0; day < names.length; day++) {
            picture.text(x, top + day, names[day], Ink.QUIET);
            for (int i = first; i < Math.min(weeks.size(), first + room); i++) {
                picture.text(
                        x + 3 + i - first, top + day, sign(weeks.get(i).days().get(day)), Ink.PLAIN);
            }
        }
        int y = top + names.length;
        for (int i = first; i < Math.min(weeks.size(), first + room); i++) {
            int number = weeks.get(i).number().orElse(0);
            boolean marked = i == thisWeek() || (number > 9 && i + 1 == thisWeek());
            if (number > 0 && (number == 1 || number % NUMBERED == 0) && i + 1 < first + room && !marked) {
                picture.text(x + 3 + i - first, y, Integer.toString(number), Ink.QUIET);
            }
        }
        if (thisWeek() >= first && thisWeek() < first + room) {
            picture.text(x + 3 + thisWeek() - first, y, "^", Ink.STRONG);
        }
        return y + 1;
    }

    private int thisWeek() {
        return year.thisWeek().map(year.weeks()::indexOf).orElse(-1);
    }

    private static String sign(YearView.Day day) {
        return switch (day) {
            case DONE -> "■";
            case AWAY -> "▲";
            case MISSED -> "x";
            case OFF -> "–";
            case AHEAD -> "□";
            case FREE -> " ";
        };
    }

    /** Two tables on a line, so that all have room. */
    private void tables(Picture picture, int x, int top, int width) {
        List<YearView.OfTable> tables = year.tables();
        int rows = (tables.size() + 1) / 2;
        for (int i = 0; i < tables.size(); i++) {
            String line = YearWords.table(words, tables.get(i));
            picture.text(x + (i / rows) * ((width + 2) / 2), top + i % rows, line, Ink.PLAIN);
        }
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().is('p')) {
            return PageResult.of(this, new OpenPage(OpenPage.What.PLAN, words, child, key.at()));
        }
        return key.key().closes() ? PageResult.of(this, PageEffect.BACK) : PageResult.of(this);
    }
}
