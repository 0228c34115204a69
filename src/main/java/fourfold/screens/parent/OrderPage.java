// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.log.ParentAction;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The order in which the tables open: moved by hand, or one of two that are usual. */
record OrderPage(SteeringKeys steers, List<Integer> order, int chosen) implements KeyPage {
    OrderPage {
        order = List.copyOf(order);
    }

    @Override
    public void draw(Picture picture) {
        Words words = steers.words();
        picture.centred(
                picture.height() >= 22 ? 1 : 0,
                words.say("order.title", steers.child().name()),
                Ink.STRONG);
        int y = picture.height() >= 22 ? 3 : 2;
        int x = picture.width() / 2 - 10;
        for (int i = 0; i < order.size(); i++) {
            String line = (i == chosen ? "► " : "  ") + words.say("order.table", i + 1, order.get(i));
            picture.text(x, y + i, line, i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        y += order.size() + 1;
        for (String text : Wrapping.lines(words.say("order.help"), Math.min(70, picture.width() - 2))) {
            picture.centred(y++, text, Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("order.foot").split("   ")));
        Footer.say(picture, above, steers.message());
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case UP -> to(order, Math.floorMod(chosen - 1, order.size()));
            case DOWN -> to(order, Math.floorMod(chosen + 1, order.size()));
            case LEFT -> moved(-1);
            case RIGHT -> moved(1);
            case ENTER -> PageResult.of(this, steers.keep(new ParentAction.Order(order), key.at(), ""));
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case DIGIT -> usual(key.key().digit());
            default -> PageResult.of(this);
        };
    }

    private PageResult to(List<Integer> next, int line) {
        return PageResult.of(new OrderPage(steers, next, line));
    }

    private PageResult usual(int number) {
        return switch (number) {
            case 1 -> to(Families.USUAL_ORDER, chosen);
            case 2 -> to(Families.EASY_FIRST, chosen);
            default -> PageResult.of(this);
        };
    }

    /** The chosen table one place earlier or later; the mark goes with it. */
    private PageResult moved(int by) {
        int to = chosen + by;
        if (to < 0 || to >= order.size()) {
            return PageResult.of(this);
        }
        List<Integer> next = new ArrayList<>(order);
        Collections.swap(next, chosen, to);
        return to(next, to);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof HomeEffect.Failed
                ? PageResult.of(new OrderPage(steers.after(outcome), order, chosen))
                : PageResult.of(this, PageEffect.BACK);
    }
}
