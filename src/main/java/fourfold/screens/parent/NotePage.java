// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Families;
import fourfold.screens.KeyPage;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.TeachingNotes;
import fourfold.words.Words;
import java.util.List;

/** The note on how to teach a table. */
record NotePage(Words words, int table, ScrolledText text) implements KeyPage, Speaking {
    static NotePage of(Words words, int table) {
        return new NotePage(words, table, ScrolledText.of(TeachingNotes.of(words, table)));
    }

    @Override
    public void draw(Picture picture) {
        text.draw(picture, words.say("note.foot"));
    }

    @Override
    public List<String> said() {
        return text.text();
    }

    @Override
    public String keys() {
        return words.say("note.foot");
    }

    @Override
    public boolean isOnlyRead() {
        return true;
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return switch (key.key().kind()) {
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            case LEFT -> PageResult.of(of(words, Math.max(1, table - 1)));
            case RIGHT -> PageResult.of(of(words, Math.min(Families.LARGEST_FACTOR, table + 1)));
            default -> PageResult.of(new NotePage(words, table, text.moved(key)));
        };
    }
}
