// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.plain.Spoken;
import fourfold.terminal.Key;
import fourfold.terminal.Page;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One of the parent's pages in sentences and nothing drawn, for whoever hears it or can't read drawings: its keys are the
 * page's own, Space and Backspace turn over.
 *
 * @param page what is said
 * @param first the first line shown
 */
record SpokenPage(Speaking page, int first) implements Page {
    private Words words() {
        return page.words();
    }

    @Override
    public void draw(Picture picture) {
        text().draw(picture, words().say("spoken.foot"));
    }

    private ScrolledText text() {
        List<String> told = new ArrayList<>();
        page.said().stream()
                .filter(line -> !line.isBlank())
                .map(line -> Spoken.heard(words(), withoutDrawing(line)))
                .forEach(told::add);
        String keys = Arrays.stream(page.keys().split(" {3}"))
                .map(this::withoutDrawing)
                .collect(Collectors.joining("; "));
        told.add(Spoken.heard(words(), words().say("spoken.keys", keys)));
        return new ScrolledText(told, first);
    }

    /** Arrows have names; what only marks a place is left out. */
    private String withoutDrawing(String text) {
        return text.replace("↑ ↓", words().say("spoken.updown"))
                .replace("← →", words().say("spoken.leftright"))
                .replace("→", words().say("spoken.right"))
                .replace("←", words().say("spoken.left"))
                .replaceAll("[►◄●]", "");
    }

    @Override
    public PageResult on(PageEvent event) {
        if (event instanceof PageEvent.Pressed key && turns(key.key())) {
            return PageResult.of(new SpokenPage(page, turned(key).first()));
        }
        PageResult result = page.on(event);
        int from = event instanceof PageEvent.Pressed ? 0 : first;
        if (!(result.next() instanceof Speaking next)) {
            return result;
        }
        boolean same = next == page && from == first;
        return new PageResult(same ? this : new SpokenPage(next, from), result.effects());
    }

    private boolean turns(Key key) {
        return !page.isTyping()
                && (key.is(' ')
                        || key.kind() == Key.Kind.ERASE
                        || (page.isOnlyRead() && (key.kind() == Key.Kind.UP || key.kind() == Key.Kind.DOWN)));
    }

    private ScrolledText turned(PageEvent.Pressed key) {
        return key.key().is(' ')
                ? text().turned(key, 1)
                : key.key().kind() == Key.Kind.ERASE ? text().turned(key, -1) : text().moved(key);
    }
}
