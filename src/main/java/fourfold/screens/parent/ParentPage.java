package fourfold.screens.parent;

import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** For parents: whose grid? */
public final class ParentPage implements MutablePage {
    private final PageContext context;
    private final SessionClock moments;
    private final List<Child> children;
    private final Menu menu;
    private String trouble = "";

    public ParentPage(PageContext context, SessionClock moments) {
        this.context = context;
        this.moments = moments;
        this.children = context.home().children().list();
        List<String> lines = new ArrayList<>(children.stream().map(Child::name).toList());
        lines.add(context.words().say("parent.back"));
        this.menu = new Menu(lines);
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 6);
        picture.centred(top, context.words().say("parent.title"), Ink.STRONG);
        picture.centred(top + 2, context.words().say("parent.question"), Ink.PLAIN);
        menu.draw(picture, top + 4);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, context.words().say("parent.foot"), Ink.QUIET);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE) {
            return Navigation.BACK;
        }
        if (key.is('?')) {
            return new Navigation.Open(new GuidePage(context));
        }
        if (!menu.on(key)) {
            return Navigation.STAY;
        }
        if (menu.chosen() >= children.size()) {
            return Navigation.BACK;
        }
        try {
            return new Navigation.Open(new GridPage(context, children.get(menu.chosen()), moments));
        } catch (RecordsFailure e) {
            trouble = context.words().failure(e);
            return Navigation.STAY;
        }
    }
}
