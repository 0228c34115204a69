// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEvent;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import java.util.List;

/**
 * Paragraphs that may be longer than the window: a value that keys move.
 *
 * @param text a paragraph each; the first, and each after an empty one, is a heading
 * @param first the first line shown
 */
record ScrolledText(List<String> text, int first) {
    ScrolledText {
        text = List.copyOf(text);
    }

    /** At its beginning. */
    static ScrolledText of(List<String> text) {
        return new ScrolledText(text, 0);
    }

    /** Draws it above the footer. */
    void draw(Picture picture, String foot) {
        int width = width(picture.width());
        List<String> lines = lines(picture.width());
        int room = room(picture.height());
        int from = Math.min(first, Math.max(0, lines.size() - room));
        int x = (picture.width() - width) / 2;
        for (int i = 0; i < Math.min(room, lines.size() - from); i++) {
            String line = lines.get(from + i);
            boolean heading = from + i == 0 || lines.get(from + i - 1).isEmpty();
            picture.text(x, 1 + i, line, heading ? Ink.STRONG : Ink.PLAIN);
        }
        Footer.draw(picture, List.of(foot.split("   ")));
    }

    private static int width(int columns) {
        return Math.min(72, columns - 4);
    }

    private static int room(int rows) {
        return Math.max(1, rows - 3);
    }

    private List<String> lines(int columns) {
        return text.stream()
                .flatMap(paragraph -> Wrapping.lines(paragraph, width(columns)).stream())
                .toList();
    }

    /** Moved by a key; the same for a key that moves nothing. */
    ScrolledText moved(PageEvent.Pressed key) {
        int last = Math.max(0, lines(key.columns()).size() - room(key.rows()));
        int from = Math.min(first, last);
        return switch (key.key().kind()) {
            case RIGHT, ENTER -> turned(key, 1);
            case LEFT -> turned(key, -1);
            default -> new ScrolledText(text, key.key().scrolled(from, last));
        };
    }

    /** A whole page further on or back. */
    ScrolledText turned(PageEvent.Pressed key, int pages) {
        int last = Math.max(0, lines(key.columns()).size() - room(key.rows()));
        int by = pages * (room(key.rows()) - 1);
        return new ScrolledText(text, Math.max(0, Math.min(last, Math.min(first, last) + by)));
    }

    /** With other text, moved as far. */
    ScrolledText with(List<String> other) {
        return new ScrolledText(other, first);
    }
}
