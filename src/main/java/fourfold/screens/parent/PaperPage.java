package fourfold.screens.parent;

import fourfold.facts.Question;
import fourfold.home.Home;
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
import java.time.Instant;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What a child answered on the page that was printed last: all right, but for those that are marked. */
record PaperPage(Words words, Child child, List<Question> questions, Set<Integer> wrong, int chosen, Ending ending)
        implements KeyPage {
    private static final int WIDE = 18;

    PaperPage {
        wrong = Set.copyOf(wrong);
    }

    PaperPage(Words words, Child child, List<Question> questions) {
        this(words, child, questions, Set.of(), 0, new Ending(false, ""));
    }

    /** Whether the answers are kept, and the line that says so. */
    record Ending(boolean kept, String message) {}

    private static int columns(int width) {
        return Math.max(1, Math.min(4, (width - 4) / WIDE));
    }

    private int rows(int width) {
        int columns = columns(width);
        return Math.max(1, (questions.size() + columns - 1) / columns);
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(picture.height() >= 22 ? 1 : 0, words.say("paper.title", child.name()), Ink.STRONG);
        int top = picture.height() >= 22 ? 3 : 2;
        if (questions.isEmpty()) {
            picture.centred(top + 2, words.say("paper.none"), Ink.PLAIN);
        }
        int columns = columns(picture.width());
        int rows = rows(picture.width());
        int left = (picture.width() - columns * WIDE) / 2;
        for (int i = 0; i < questions.size(); i++) {
            Question question = questions.get(i);
            String line = (i == chosen ? "►" : " ") + (wrong.contains(i) ? "–" : " ") + words.fact(question.fact());
            picture.text(left + i / rows * WIDE, top + i % rows, line, wrong.contains(i) ? Ink.QUIET : Ink.PLAIN);
        }
        if (!questions.isEmpty()) {
            int y = top + rows + 1;
            for (String line : Wrapping.lines(words.say("paper.how"), Math.min(66, picture.width() - 2))) {
                picture.centred(y++, line, Ink.PLAIN);
            }
        }
        int above = Footer.draw(picture, List.of(words.say("paper.foot").split("   ")));
        picture.centred(above - 1, ending.message(), Ink.STRONG);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (questions.isEmpty() || ending.kept()) {
            return PageResult.of(this);
        }
        int last = questions.size() - 1;
        return switch (key.key().kind()) {
            case UP -> at(Math.max(0, chosen - 1));
            case DOWN -> at(Math.min(last, chosen + 1));
            case LEFT -> at(Math.max(0, chosen - rows(key.columns())));
            case RIGHT -> at(Math.min(last, chosen + rows(key.columns())));
            case ENTER -> PageResult.of(this, new Enter(child, questions, wrong, key.at()));
            default -> key.key().is('x') ? flipped() : PageResult.of(this);
        };
    }

    private PageResult at(int question) {
        return PageResult.of(new PaperPage(words, child, questions, wrong, question, ending));
    }

    private PageResult flipped() {
        Set<Integer> next = new HashSet<>(wrong);
        if (!next.remove(chosen)) {
            next.add(chosen);
        }
        return PageResult.of(new PaperPage(words, child, questions, next, chosen, ending));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        Ending next;
        if (outcome instanceof HomeEffect.Failed failed) {
            next = new Ending(false, words.failure(failed.failure()));
        } else if (outcome instanceof HomeEffect.Kept) {
            next = new Ending(true, words.say("paper.kept", questions.size() - wrong.size(), questions.size()));
        } else {
            next = new Ending(false, words.say("drill.elsewhere", child.name()));
        }
        return PageResult.of(new PaperPage(words, child, questions, wrong, chosen, next));
    }

    /** Keeps the answers of a page. */
    record Enter(Child child, List<Question> questions, Set<Integer> wrong, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            BitSet places = new BitSet();
            wrong.forEach(places::set);
            return home.paperAnswers().enter(child, questions, places, at) ? new Kept() : new Elsewhere();
        }
    }
}
