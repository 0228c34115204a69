// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.insight.PageKind;
import fourfold.log.Child;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Menu;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/** Pages to print: which one? */
record PrintPage(Words words, Child child, Menu menu, String message) implements KeyPage {
    PrintPage(Words words, Child child) {
        this(words, child, new Menu(lines(words)), "");
    }

    private static List<String> lines(Words words) {
        return Stream.of(PageKind.values())
                .map(page -> words.say("print." + page.key()))
                .toList();
    }

    @Override
    public void draw(Picture picture) {
        int top = picture.height() >= 22 ? 1 : 0;
        picture.centred(top, words.say("print.title", child.name()), Ink.STRONG);
        menu.draw(picture, top + 2);
        int above = Footer.draw(picture, List.of(words.say("print.foot").split("   ")));
        Footer.say(picture, above, message);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        Menu next = menu.on(key.key());
        PrintPage page = new PrintPage(words, child, next, "");
        return next.picked()
                ? PageResult.of(page, new Choose(words, child, PageKind.values()[next.chosen()]))
                : PageResult.of(page);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof HomeEffect.Failed failed
                ? PageResult.of(new PrintPage(words, child, menu, words.failure(failed.failure())))
                : KeyPage.super.done(outcome, at);
    }

    /** Opens the choices for a page. */
    private record Choose(Words words, Child child, PageKind kind) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            return new Made(PrintChoicePage.of(
                    words, child, kind, home.printPages().folder().toString()));
        }
    }
}
