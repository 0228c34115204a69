// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.List;

/**
 * What follows from an event.
 *
 * @param next the page as it is now
 * @param effects what is to be done, in this order
 */
public record PageResult(Page next, List<PageEffect> effects) {
    public PageResult {
        effects = List.copyOf(effects);
    }

    /** A page, and what is to be done. */
    public static PageResult of(Page next, PageEffect... effects) {
        return new PageResult(next, List.of(effects));
    }
}
