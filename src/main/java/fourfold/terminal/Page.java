// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

/**
 * One page of the program, as a value: it draws itself, and an event makes the next page of it, and effects. What it
 * shows was read before it was made; a page itself reads and writes nothing.
 */
public interface Page {
    /** Draws the page on an empty sheet. */
    void draw(Picture picture);

    /** What follows from an event: a function of this page and the event alone. This very page if nothing changes. */
    PageResult on(PageEvent event);
}
