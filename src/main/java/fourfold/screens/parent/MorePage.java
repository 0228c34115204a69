// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.log.Child;
import fourfold.log.RecordsFailure;
import fourfold.screens.KeyPage;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.List;
import java.util.stream.Stream;

/** The parent's other pages, by number. */
record MorePage(Words words, Child child, Menu menu, String trouble) implements KeyPage {
    static MorePage of(Words words, Child child) {
        List<String> lines = Stream.of(OpenPage.What.values())
                .map(what -> words.say(what.key()))
                .toList();
        return new MorePage(words, child, new Menu(lines), "");
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 8);
        picture.centred(top, words.say("more.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, words.say("parent.foot"), Ink.QUIET);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        Menu next = menu.on(key.key());
        MorePage page = new MorePage(words, child, next, trouble);
        return next.picked()
                ? PageResult.of(page, new OpenPage(OpenPage.What.values()[next.chosen()], words, child, key.at()))
                : PageResult.of(page);
    }

    @Override
    public Page failed(RecordsFailure failure) {
        return new MorePage(words, child, menu, words.failure(failure));
    }
}
