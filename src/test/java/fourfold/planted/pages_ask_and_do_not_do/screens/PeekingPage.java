// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.pages_ask_and_do_not_do.screens;

import fourfold.home.Home;
import fourfold.screens.KeyPage;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;

/** Breaks the map on purpose: a page reads the home itself, at every key. */
public record PeekingPage(Home home, int children) implements KeyPage {
    @Override
    public void draw(Picture picture) {
        picture.text(0, 0, Integer.toString(children));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return PageResult.of(new PeekingPage(home, home.children().list().size()));
    }
}
