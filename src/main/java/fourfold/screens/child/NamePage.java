// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.home.Home;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.screens.HomeEffect;
import fourfold.screens.KeyPage;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.Instant;

/** A new child's name is typed here. */
record NamePage(Words words, String name, String trouble) implements KeyPage {
    @Override
    public void draw(Picture picture) {
        int y = picture.height() / 2 - 3;
        picture.centred(y, words.say("name.question"), Ink.PLAIN);
        picture.centred(y + 2, name + "_", Ink.STRONG);
        picture.centred(y + 4, trouble, Ink.PLAIN);
        picture.centred(picture.height() - 1, words.say("name.foot"), Ink.QUIET);
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case ENTER -> entered(key.at());
            default -> PageResult.of(new NamePage(words, key.key().typedAfter(name, ChildName.LONGEST), ""));
        };
    }

    private PageResult entered(Instant at) {
        try {
            ChildName.chosen(name);
            return PageResult.of(new NamePage(words, name, ""), new Add(name, at));
        } catch (InvalidValue e) {
            return PageResult.of(new NamePage(words, name, words.problem(e.problem())));
        }
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return outcome instanceof HomeEffect.Failed failed
                ? PageResult.of(new NamePage(words, name, words.failure(failed.failure())))
                : PageResult.of(this, PageEffect.BACK);
    }

    /** Adds a child. */
    record Add(String name, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.children().add(name, at);
            return new Kept();
        }
    }
}
