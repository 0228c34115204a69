// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Prompt;
import fourfold.home.Home;
import fourfold.home.Mark;
import fourfold.home.NumberedPage;
import fourfold.home.PaperAnswers;
import fourfold.insight.PageKind;
import fourfold.log.Child;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * What a child answered on one printed page: each question right, not right, or not done; cards also right but slow.
 *
 * @param when the day it was done, the last day it can be, and the digits of the page's time
 */
record PaperEntryPage(
        Words words, Child child, NumberedPage page, List<Mark> marks, int chosen, When when, String message)
        implements KeyPage {
    private static final int WIDE = 18;
    private static final int LONGEST_TIME = 4;

    PaperEntryPage {
        marks = List.copyOf(marks);
    }

    /** The day it was done, today, and the digits of minutes and seconds. */
    private record When(LocalDate day, LocalDate today, String digits) {
        Optional<Duration> time() {
            if (digits.isEmpty()) {
                return Optional.empty();
            }
            int typed = Integer.parseInt(digits);
            return Optional.of(Duration.ofSeconds(typed / 100 * 60L + typed % 100))
                    .filter(t -> !t.isZero());
        }

        String clock() {
            int typed = digits.isEmpty() ? 0 : Integer.parseInt(digits);
            return typed / 100 + (typed % 100 < 10 ? ":0" : ":") + typed % 100;
        }
    }

    static PaperEntryPage of(Words words, Child child, NumberedPage page, LocalDate today) {
        String minute = page.kind() == PageKind.MINUTE ? "100" : "";
        return new PaperEntryPage(
                words,
                child,
                page,
                Collections.nCopies(page.prompts().size(), Mark.OPEN),
                0,
                new When(today, today, minute),
                already(words, page));
    }

    private static String already(Words words, NumberedPage page) {
        return switch (page.entered().size()) {
            case 0 -> "";
            case 1 -> words.say("paper.already");
            default -> words.say("paper.twice");
        };
    }

    private boolean aloud() {
        return page.kind() == PageKind.CARDS;
    }

    private static int columns(int width) {
        return Math.max(1, Math.min(4, (width - 4) / WIDE));
    }

    private int rows(int width) {
        int columns = columns(width);
        return Math.max(1, (marks.size() + columns - 1) / columns);
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        String head = words.say("paper.number", page.number()) + "   "
                + words.say("paper." + page.kind().key() + ".title") + "   " + child.name();
        picture.centred(tall ? 1 : 0, head, Ink.STRONG);
        String time = aloud() ? "" : "   " + words.say("paper.clock", when.clock());
        picture.centred(tall ? 2 : 1, words.say("paper.day", words.namedDate(when.day())) + time, Ink.PLAIN);
        int above = Footer.draw(
                picture,
                List.of(words.say(aloud() ? "paper.foot.cards" : "paper.foot.page")
                        .split("   ")));
        List<String> lines = Wrapping.lines(message, picture.width() - 4);
        int top = tall ? 4 : 2;
        questions(picture, top, Math.max(1, above - lines.size() - top));
        for (int i = 0; i < lines.size(); i++) {
            picture.centred(above - lines.size() + i, lines.get(i), Ink.STRONG);
        }
    }

    /** In columns; where there are more rows than room, those around the chosen one. */
    private void questions(Picture picture, int top, int room) {
        int rows = rows(picture.width());
        int first = Math.max(0, Math.min(chosen % rows - room / 2, rows - room));
        int left = (picture.width() - columns(picture.width()) * WIDE) / 2;
        for (int i = 0; i < marks.size(); i++) {
            Prompt prompt = page.prompts().get(i);
            String answer = prompt instanceof fourfold.facts.Question ? " = " + prompt.expected() : "";
            String line = (i == chosen ? "►" : " ") + sign(marks.get(i)) + " " + words.asked(prompt) + answer;
            Ink ink = i == chosen ? Ink.STRONG : marks.get(i) == Mark.OPEN ? Ink.QUIET : Ink.PLAIN;
            int row = i % rows - first;
            if (row >= 0 && row < room) {
                picture.text(left + i / rows * WIDE, top + row, line, ink);
            }
        }
    }

    private static char sign(Mark mark) {
        return switch (mark) {
            case RIGHT -> '+';
            case SLOW -> 's';
            case WRONG -> '-';
            case OPEN -> '·';
        };
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        Key pressed = key.key();
        if (pressed.kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (!page.entered().isEmpty()) {
            return pressed.is('u') ? PageResult.of(this, new TakeBack(child, page, key.at())) : PageResult.of(this);
        }
        int last = marks.size() - 1;
        return switch (pressed.kind()) {
            case UP -> at(Math.max(0, chosen - 1));
            case DOWN -> at(Math.min(last, chosen + 1));
            case LEFT -> at(Math.max(0, chosen - rows(key.columns())));
            case RIGHT -> at(Math.min(last, chosen + rows(key.columns())));
            case DIGIT ->
                timed(when.digits().length() < LONGEST_TIME ? when.digits() + pressed.digit() : when.digits());
            case ERASE ->
                timed(when.digits().substring(0, Math.max(0, when.digits().length() - 1)));
            case ENTER -> kept(key.at());
            default -> letter(pressed);
        };
    }

    private PageResult letter(Key pressed) {
        if (pressed.is('r')) {
            return marked(Mark.RIGHT);
        }
        if (pressed.is('s') && aloud()) {
            return marked(Mark.SLOW);
        }
        if (pressed.is('x')) {
            return marked(Mark.WRONG);
        }
        if (pressed.is('o')) {
            return marked(Mark.OPEN);
        }
        if (pressed.is('a')) {
            List<Mark> all =
                    marks.stream().map(m -> m == Mark.OPEN ? Mark.RIGHT : m).toList();
            return PageResult.of(with(page, all, chosen, when, ""));
        }
        if (pressed.is('-') || pressed.is('+')) {
            LocalDate day = when.day().plusDays(pressed.is('-') ? -1 : 1);
            boolean possible = !day.isAfter(when.today()) && !day.isBefore(page.day());
            return PageResult.of(
                    with(page, marks, chosen, possible ? new When(day, when.today(), when.digits()) : when, ""));
        }
        return PageResult.of(this);
    }

    private PaperEntryPage with(NumberedPage of, List<Mark> all, int question, When at, String line) {
        return new PaperEntryPage(words, child, of, all, question, at, line);
    }

    private PageResult at(int question) {
        return PageResult.of(with(page, marks, question, when, message));
    }

    /** Marks the chosen question and goes on to the next. */
    private PageResult marked(Mark mark) {
        List<Mark> all = new ArrayList<>(marks);
        all.set(chosen, mark);
        return PageResult.of(with(page, all, Math.min(marks.size() - 1, chosen + 1), when, ""));
    }

    private PageResult timed(String digits) {
        return aloud()
                ? PageResult.of(this)
                : PageResult.of(with(page, marks, chosen, new When(when.day(), when.today(), digits), ""));
    }

    private PageResult kept(Instant at) {
        PaperAnswers.Filled filled = new PaperAnswers.Filled(marks, when.day(), when.time());
        return filled.done() == 0
                ? PageResult.of(with(page, marks, chosen, when, words.say("paper.nothing")))
                : PageResult.of(this, new Enter(child, page, filled, at));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(with(page, marks, chosen, when, words.failure(failed.failure())));
        }
        if (outcome instanceof Changed changed) {
            return PageResult.of(with(changed.page(), marks, chosen, when, said(changed.page())));
        }
        return PageResult.of(with(page, marks, chosen, when, words.say("drill.elsewhere", child.name())));
    }

    /** What is said of a page after a change. */
    private String said(NumberedPage now) {
        if (now.entered().isEmpty()) {
            return words.say("paper.back");
        }
        PaperAnswers.Filled filled = new PaperAnswers.Filled(marks, when.day(), when.time());
        return page.entered().isEmpty()
                ? words.say("paper.kept", filled.right(), filled.done())
                : words.say("paper.back.one");
    }

    /** The page as it is now. */
    private record Changed(NumberedPage page) implements PageEffect.Outcome {}

    /** Keeps what was marked. */
    private record Enter(Child child, NumberedPage page, PaperAnswers.Filled filled, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return home.paperAnswers()
                    .enter(child, page, filled, at)
                    .<Outcome>map(Changed::new)
                    .orElseGet(Elsewhere::new);
        }
    }

    /** Takes back what was kept. */
    private record TakeBack(Child child, NumberedPage page, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return new Changed(home.paperAnswers().takeBack(child, page, at));
        }
    }
}
