// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.screens.KeyPage;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** The parents' guide, to scroll through. It is packaged with the program, once for each language. */
public record GuidePage(Words words, ScrolledText text) implements KeyPage {
    /** The guide's first page, in this language. */
    public static GuidePage of(Words words) {
        return new GuidePage(
                words, ScrolledText.of(text(words.language()).lines().toList()));
    }

    /** The whole guide in a language. */
    public static String text(Locale language) {
        String name = language.equals(Locale.ENGLISH) ? "guide.txt" : "guide_" + language.getLanguage() + ".txt";
        try (InputStream in = Words.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program was packaged without its guide");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void draw(Picture picture) {
        text.draw(picture, words.say("guide.foot"));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return key.key().kind() == Key.Kind.ESCAPE
                ? PageResult.of(this, PageEffect.BACK)
                : PageResult.of(new GuidePage(words, text.moved(key)));
    }
}
