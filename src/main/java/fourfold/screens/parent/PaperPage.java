package fourfold.screens.parent;

import fourfold.facts.Question;
import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.BitSet;
import java.util.List;

/** What a child answered on the page that was printed last: all right, but for those that are marked. */
final class PaperPage implements MutablePage {
    private static final int WIDE = 18;

    private final PageContext context;
    private final Words words;
    private final Child child;
    private final List<Question> questions;
    private final BitSet wrong = new BitSet();
    private int chosen;
    private int rows = 1;
    private String told = "";
    private boolean kept;

    PaperPage(PageContext context, Child child) {
        this.context = context;
        this.words = context.words();
        this.child = child;
        this.questions = context.home().paperAnswers().open(child);
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(picture.height() >= 22 ? 1 : 0, words.say("paper.title", child.name()), Ink.STRONG);
        int top = picture.height() >= 22 ? 3 : 2;
        if (questions.isEmpty()) {
            picture.centred(top + 2, words.say("paper.none"), Ink.PLAIN);
        }
        int columns = Math.max(1, Math.min(4, (picture.width() - 4) / WIDE));
        rows = Math.max(1, (questions.size() + columns - 1) / columns);
        int left = (picture.width() - columns * WIDE) / 2;
        for (int i = 0; i < questions.size(); i++) {
            Question question = questions.get(i);
            String line = (i == chosen ? "▸" : " ") + (wrong.get(i) ? "–" : " ") + words.fact(question.fact());
            picture.text(left + i / rows * WIDE, top + i % rows, line, wrong.get(i) ? Ink.QUIET : Ink.PLAIN);
        }
        if (!questions.isEmpty()) {
            int y = top + rows + 1;
            for (String line : Wrapping.lines(words.say("paper.how"), Math.min(66, picture.width() - 2))) {
                picture.centred(y++, line, Ink.PLAIN);
            }
        }
        int above = Footer.draw(picture, List.of(words.say("paper.foot").split("   ")));
        picture.centred(above - 1, told, Ink.STRONG);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Navigation.BACK;
        }
        if (questions.isEmpty() || kept) {
            return Navigation.STAY;
        }
        switch (key.kind()) {
            case UP -> chosen = Math.max(0, chosen - 1);
            case DOWN -> chosen = Math.min(questions.size() - 1, chosen + 1);
            case LEFT -> chosen = Math.max(0, chosen - rows);
            case RIGHT -> chosen = Math.min(questions.size() - 1, chosen + rows);
            case ENTER -> keep(at);
            default -> {
                if (key.is('x')) {
                    wrong.flip(chosen);
                }
            }
        }
        return Navigation.STAY;
    }

    private void keep(Instant at) {
        try {
            kept = context.home().paperAnswers().enter(child, questions, wrong, at);
            told = kept
                    ? words.say("paper.kept", questions.size() - wrong.cardinality(), questions.size())
                    : words.say("drill.elsewhere", child.name());
        } catch (RecordsFailure e) {
            told = words.failure(e);
        }
    }
}
