// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.home.Home;
import fourfold.home.Mark;
import fourfold.insight.Grid;
import fourfold.insight.PageChoice;
import fourfold.insight.PageKind;
import fourfold.insight.PaperQuestions;
import fourfold.log.Child;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.screens.TallDigits;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Out loud: the program shows a question, the child says the answer, and the grown-up keys how it went with one hand on
 * the arrows. What was keyed is kept when the page closes.
 *
 * @param marks of the questions so far
 * @param kept the drill that holds them, once they are kept
 */
record AloudPage(Words words, Child child, List<Prompt> prompts, List<Mark> marks, Optional<UUID> kept, String message)
        implements KeyPage {
    private static final int QUESTIONS = 20;

    AloudPage {
        prompts = List.copyOf(prompts);
        marks = List.copyOf(marks);
    }

    /** The questions that need it most, chosen as for a page of paper. */
    static AloudPage of(Words words, Child child, Progress progress, Instant at) {
        PageChoice choice = PageChoice.usual(PageKind.PRACTICE).withCount(QUESTIONS);
        List<Prompt> prompts =
                PaperQuestions.signed(PaperQuestions.of(Grid.of(progress, at), choice, progress.answers()), progress);
        return new AloudPage(words, child, prompts, List.of(), Optional.empty(), "");
    }

    private boolean isOver() {
        return marks.size() == prompts.size();
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        String place = isOver() || kept.isPresent() ? "" : "   " + (marks.size() + 1) + "/" + prompts.size();
        picture.centred(tall ? 1 : 0, words.say("aloud.title", child.name()) + place, Ink.STRONG);
        int middle = picture.height() / 2;
        if (prompts.isEmpty()) {
            picture.centred(middle, words.say("aloud.none"), Ink.PLAIN);
        } else if (!isOver() && kept.isEmpty()) {
            question(picture, prompts.get(marks.size()));
        }
        if (!marks.isEmpty() && kept.isEmpty()) {
            Prompt last = prompts.get(marks.size() - 1);
            String mark =
                    words.say("aloud." + marks.get(marks.size() - 1).name().toLowerCase(java.util.Locale.ROOT));
            picture.centred(tall ? 3 : 1, told(last) + "   " + mark, Ink.QUIET);
        }
        int above = Footer.draw(
                picture,
                List.of(words.say(kept.isEmpty() ? "aloud.foot" : "aloud.foot.kept")
                        .split("   ")));
        String told =
                message.isEmpty() && !prompts.isEmpty() ? words.say(isOver() ? "aloud.over" : "aloud.how") : message;
        List<String> lines = Wrapping.lines(told, Math.min(70, picture.width() - 2));
        for (int i = 0; i < lines.size(); i++) {
            picture.centred(above - lines.size() + i - 1, lines.get(i), message.isEmpty() ? Ink.QUIET : Ink.STRONG);
        }
    }

    private String told(Prompt last) {
        return last instanceof Question question
                ? words.fact(question.fact())
                : words.asked(last) + "   " + last.expected();
    }

    private void question(Picture picture, Prompt prompt) {
        TallDigits tall = TallDigits.on(picture);
        List<String> rows = tall.rows(words.asked(prompt).replace(" ", ""), picture);
        int y = Math.max(2, (picture.height() - rows.size()) / 2 - 1);
        for (int i = 0; i < rows.size(); i++) {
            picture.centred(y + i, rows.get(i), Ink.STRONG);
        }
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        Key pressed = key.key();
        if (kept.isPresent() || prompts.isEmpty()) {
            return kept.isPresent() && pressed.is('u')
                    ? PageResult.of(this, new TakeBack(kept.get(), key.at()))
                    : pressed.closes() ? PageResult.of(this, PageEffect.BACK) : PageResult.of(this);
        }
        return switch (pressed.kind()) {
            case RIGHT -> marked(Mark.RIGHT);
            case DOWN -> marked(Mark.SLOW);
            case LEFT -> marked(Mark.WRONG);
            case UP -> PageResult.of(with(marks.subList(0, Math.max(0, marks.size() - 1)), kept, ""));
            case ENTER, ESCAPE ->
                marks.isEmpty()
                        ? PageResult.of(this, PageEffect.BACK)
                        : PageResult.of(this, new Keep(child, prompts.subList(0, marks.size()), marks, key.at()));
            default -> PageResult.of(this);
        };
    }

    private PageResult marked(Mark mark) {
        if (isOver()) {
            return PageResult.of(this);
        }
        List<Mark> all = new ArrayList<>(marks);
        all.add(mark);
        return PageResult.of(with(all, kept, ""));
    }

    private AloudPage with(List<Mark> all, Optional<UUID> drill, String line) {
        return new AloudPage(words, child, prompts, all, drill, line);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        if (outcome instanceof HomeEffect.Failed failed) {
            return PageResult.of(with(marks, kept, words.failure(failed.failure())));
        }
        if (outcome instanceof Drill drill) {
            long right = marks.stream().filter(m -> m != Mark.WRONG).count();
            return PageResult.of(with(marks, Optional.of(drill.id()), words.say("paper.kept", right, marks.size())));
        }
        return outcome instanceof HomeEffect.Kept
                ? PageResult.of(with(List.of(), Optional.empty(), words.say("aloud.back")))
                : PageResult.of(with(marks, kept, words.say("drill.elsewhere", child.name())));
    }

    /** The drill that holds the answers. */
    private record Drill(UUID id) implements PageEffect.Outcome {}

    /** Keeps what was keyed. */
    private record Keep(Child child, List<Prompt> prompts, List<Mark> marks, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return home.paperAnswers()
                    .keepAloud(child, prompts, marks, at)
                    .<Outcome>map(Drill::new)
                    .orElseGet(Elsewhere::new);
        }
    }

    /** Takes back what was kept. */
    private record TakeBack(UUID drill, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.paperAnswers().takeBack(drill, at);
            return new Kept();
        }
    }
}
