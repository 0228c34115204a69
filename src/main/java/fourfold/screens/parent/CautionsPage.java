// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.util.List;

/** What a parent should keep in mind. */
record CautionsPage(Words words) implements KeyPage {
    private static final int SENTENCES = 6;

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("cautions.title"), Ink.STRONG);
        int width = Math.min(66, picture.width() - 4);
        int x = (picture.width() - width) / 2;
        int y = 3;
        boolean tall = picture.height() >= 22;
        for (int i = 1; i <= SENTENCES; i++) {
            for (String line : Wrapping.lines(words.say("cautions." + i), width)) {
                picture.text(x, y++, line, Ink.PLAIN);
            }
            y += tall ? 1 : 0;
        }
        Footer.draw(picture, List.of(words.say("cautions.foot")));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return key.key().closes() ? PageResult.of(this, PageEffect.BACK) : PageResult.of(this);
    }
}
