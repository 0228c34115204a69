// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.home.Home;
import fourfold.log.Child;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.screens.TallDigits;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.ClockAdvice;
import fourfold.words.TodayWords;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** How many minutes today? Enter begins. */
record MinutesPage(PageContext context, Child child, Progress progress, String today, int minutes, String trouble)
        implements KeyPage {
    private static final int SHORTEST = 5;
    private static final int LONGEST = 10;

    /** Reads where a child stands, and makes the page. */
    record Open(PageContext context, Child child, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            Progress progress = home.records().progress(child);
            return new Made(new MinutesPage(
                    context,
                    child,
                    progress,
                    TodayWords.forChild(
                            context.words(),
                            home.records()
                                    .today(
                                            child,
                                            LocalDate.ofInstant(
                                                    at, home.moments().zone()))),
                    progress.steering().settings().minutes(),
                    ClockAdvice.of(context.words(), progress, at).orElseGet(() -> toTheParent(home))));
        }

        /** Where the grown-ups' pages are, said before the household's first drill and not again. */
        private String toTheParent(Home home) {
            boolean first = home.children().all().stream()
                    .allMatch(known -> home.records().sessions(known.child()).isEmpty());
            return first
                    ? context.words().say("minutes.parents", context.words().say("home.parents"))
                    : "";
        }
    }

    @Override
    public void draw(Picture picture) {
        Words words = context.words();
        DrillKeys keys = new DrillKeys(words, progress.steering().settings());
        boolean roomy = TallDigits.isRoomy(picture);
        int y = picture.height() / 2 - (roomy ? 9 : 5);
        picture.centred(y, words.say("minutes.hello", Words.isolated(child.name())), Ink.STRONG);
        picture.centred(y + 2, words.say("minutes.question"), Ink.PLAIN);
        if (roomy) {
            tallChoices(picture, y + 5);
            y += TallDigits.TALL.height() + 4;
        } else {
            choices(picture, y + 4);
        }
        picture.centred(y + 6, today, Ink.QUIET);
        picture.centred(y + 7, words.say("minutes.how", keys.ready()), Ink.PLAIN);
        picture.centred(y + 8, words.say("minutes.pause", keys.pause()), Ink.PLAIN);
        int line = y + 10;
        for (String part : Wrapping.lines(trouble, picture.width() - 4)) {
            picture.centred(line++, part, Ink.STRONG);
        }
        picture.centred(picture.height() - 1, words.say("minutes.foot"), Ink.QUIET);
    }

    /** The minutes in a row, the chosen ones in brackets. */
    private void choices(Picture picture, int y) {
        List<String> choices = new ArrayList<>();
        for (int m = SHORTEST; m <= LONGEST; m++) {
            choices.add(m == minutes ? "[" + m + "]" : " " + m + " ");
        }
        picture.centred(y, String.join(" ", choices), Ink.STRONG);
    }

    /** The same in tall digits, the chosen ones on a line. */
    private void tallChoices(Picture picture, int y) {
        int step = TallDigits.TALL.width(2);
        int x = (picture.width() - (LONGEST - SHORTEST + 1) * step) / 2;
        for (int m = SHORTEST; m <= LONGEST; m++) {
            Ink ink = m == minutes ? Ink.STRONG : Ink.QUIET;
            List<String> rows = TallDigits.TALL.rows(Integer.toString(m), picture);
            for (int i = 0; i < rows.size(); i++) {
                picture.text(x, y + i, rows.get(i), ink);
            }
            if (m == minutes) {
                picture.text(x, y + rows.size() + 1, "─".repeat(rows.get(0).length()), ink);
            }
            x += step;
        }
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case LEFT, DOWN -> with(Math.max(SHORTEST, minutes - 1), trouble);
            case RIGHT, UP -> with(Math.min(LONGEST, minutes + 1), trouble);
            case DIGIT ->
                with(
                        key.key().digit() <= 1
                                ? LONGEST
                                : Math.max(SHORTEST, key.key().digit()),
                        trouble);
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case ENTER -> begins(key.at());
            case LETTER -> letter(key);
            default -> PageResult.of(this);
        };
    }

    /** The same keys as in the drill, so that one hand is enough here as well. */
    private PageResult letter(PageEvent.Pressed key) {
        return switch (key.key().letter()) {
            case ' ', '+' -> begins(key.at());
            case '-', '.', ',' -> PageResult.of(this, PageEffect.BACK);
            default -> PageResult.of(this);
        };
    }

    private PageResult with(int length, String line) {
        return PageResult.of(new MinutesPage(context, child, progress, today, length, line));
    }

    private PageResult begins(Instant at) {
        return PageResult.of(this, new Begin(context, child, progress, minutes, at));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Made made) {
            return PageResult.of(this, new PageEffect.Replace(made.page()));
        }
        return with(
                minutes,
                outcome instanceof HomeEffect.Failed failed
                        ? context.words().failure(failed.failure())
                        : context.words().say("drill.elsewhere", child.name()));
    }

    /** Takes the child's place, and makes the page of a drill. */
    record Begin(PageContext context, Child child, Progress progress, int minutes, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return home.practice()
                    .newSession(child, minutes, at)
                    .map(session -> Drill.ready(progress, session, context.scheduler(), context.surface()))
                    .<Outcome>map(drill -> new Made(new DrillPage(context.words(), child, drill, at)))
                    .orElseGet(Elsewhere::new);
        }
    }
}
