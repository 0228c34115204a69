package fourfold.screens.parent;

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
import java.util.List;

/** What a parent should keep in mind. */
final class CautionsPage implements MutablePage {
    private static final int SENTENCES = 6;

    private final Words words;

    CautionsPage(PageContext context) {
        this.words = context.words();
    }

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
    public Navigation on(Key key, Instant at) {
        return key.kind() == Key.Kind.ESCAPE || key.kind() == Key.Kind.ENTER ? Navigation.BACK : Navigation.STAY;
    }
}
