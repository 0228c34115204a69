package fourfold.screens;

import fourfold.facts.Child;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** For parents: whose grid? */
final class ParentPage implements Page {
    private final Records records;
    private final Moments moments;
    private final List<Child> children;
    private final Menu menu;
    private String trouble = "";

    ParentPage(Records records, Moments moments) {
        this.records = records;
        this.moments = moments;
        this.children = records.children();
        List<String> lines = new ArrayList<>(children.stream().map(Child::name).toList());
        lines.add(records.words().say("parent.back"));
        this.menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 6);
        picture.centred(top, records.words().say("parent.title"), Ink.STRONG);
        picture.centred(top + 2, records.words().say("parent.question"), Ink.PLAIN);
        menu.draw(picture, top + 4);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, records.words().say("parent.foot"), Ink.QUIET);
    }

    @Override
    public Move on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Move.BACK;
        }
        if (key.is('?')) {
            return new Move.Open(new GuidePage(records));
        }
        if (!menu.on(key)) {
            return Move.STAY;
        }
        if (menu.chosen() >= children.size()) {
            return Move.BACK;
        }
        try {
            return new Move.Open(new GridPage(records, children.get(menu.chosen()), moments));
        } catch (Records.NotKept e) {
            trouble = e.line();
            return Move.STAY;
        }
    }
}
