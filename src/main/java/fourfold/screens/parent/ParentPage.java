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
import java.util.ArrayList;
import java.util.List;

/** For parents: whose grid? */
record ParentPage(Words words, List<Child> children, Menu menu, String trouble) implements KeyPage {
    static ParentPage of(Words words, List<Child> children) {
        List<String> lines = new ArrayList<>(children.stream().map(Child::name).toList());
        lines.add(words.say("parent.back"));
        return new ParentPage(words, children, new Menu(lines), "");
    }

    @Override
    public void draw(Picture picture) {
        int top = Math.max(1, picture.height() / 2 - 6);
        picture.centred(top, words.say("parent.title"), Ink.STRONG);
        picture.centred(top + 2, words.say("parent.question"), Ink.PLAIN);
        menu.draw(picture, top + 4);
        picture.centred(picture.height() - 2, trouble, Ink.STRONG);
        picture.centred(picture.height() - 1, words.say("parent.foot"), Ink.QUIET);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (key.key().is('?')) {
            return PageResult.of(this, new PageEffect.Open(GuidePage.of(words)));
        }
        Menu next = menu.on(key.key());
        ParentPage page = new ParentPage(words, children, next, trouble);
        if (!next.picked()) {
            return PageResult.of(page);
        }
        return next.chosen() >= children.size()
                ? PageResult.of(page, PageEffect.BACK)
                : PageResult.of(page, new OpenPage.OfGrid(words, children.get(next.chosen()), key.at()));
    }

    @Override
    public Page failed(RecordsFailure failure) {
        return new ParentPage(words, children, menu, words.failure(failure));
    }
}
