package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.log.Child;
import fourfold.log.ParentAction;
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
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The order in which the tables open: moved by hand, or one of two that are usual. */
final class OrderPage implements MutablePage {
    private final Words words;
    private final Child child;
    private final SteeringKeys steers;
    private final List<Integer> order;
    private int chosen;

    OrderPage(PageContext context, Child child) {
        this.words = context.words();
        this.child = child;
        this.steers = new SteeringKeys(context, child);
        this.order = new ArrayList<>(steers.progress().steering().order());
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(picture.height() >= 22 ? 1 : 0, words.say("order.title", child.name()), Ink.STRONG);
        int y = picture.height() >= 22 ? 3 : 2;
        int x = picture.width() / 2 - 10;
        for (int i = 0; i < order.size(); i++) {
            String line = (i == chosen ? "▸ " : "  ") + words.say("order.table", i + 1, order.get(i));
            picture.text(x, y + i, line, i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        y += order.size() + 1;
        for (String text : Wrapping.lines(words.say("order.help"), Math.min(70, picture.width() - 2))) {
            picture.centred(y++, text, Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("order.foot").split("   ")));
        picture.centred(above - 1, steers.told(), Ink.STRONG);
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> chosen = Math.floorMod(chosen - 1, order.size());
            case DOWN -> chosen = Math.floorMod(chosen + 1, order.size());
            case LEFT -> move(-1);
            case RIGHT -> move(1);
            case ENTER -> {
                return keep(at);
            }
            case ESCAPE -> {
                return Navigation.BACK;
            }
            default -> {
                if (key.kind() == Key.Kind.DIGIT && (key.digit() == 1 || key.digit() == 2)) {
                    order.clear();
                    order.addAll(key.digit() == 1 ? Families.USUAL_ORDER : Families.ENGLISH_ORDER);
                }
            }
        }
        return Navigation.STAY;
    }

    /** The chosen table one place earlier or later; the mark goes with it. */
    private void move(int by) {
        int to = chosen + by;
        if (to >= 0 && to < order.size()) {
            Collections.swap(order, chosen, to);
            chosen = to;
        }
    }

    private Navigation keep(Instant at) {
        try {
            steers.keep(new ParentAction.Order(order), at);
            return Navigation.BACK;
        } catch (RecordsFailure e) {
            steers.say(words.failure(e));
            return Navigation.STAY;
        }
    }
}
