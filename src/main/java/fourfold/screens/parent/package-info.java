// SPDX-License-Identifier: Apache-2.0
/**
 * The parent's pages: grid, family, plan, rates, history, settings, print, and the gate before them.
 *
 * <p>Begin with {@link fourfold.screens.parent.GridPage}, where the parent arrives;
 * {@link fourfold.screens.parent.MorePage} leads to the others. {@link fourfold.screens.parent.OpenPage} reads what a
 * page shows and makes it, {@link fourfold.screens.parent.Steer} keeps what a parent decides,
 * {@link fourfold.screens.parent.StairsPicture} draws the grid.
 *
 * <p>May use what screens may, screens itself, outlook, paper and upkeep. A page is a value and reads nothing itself:
 * it is read for once when it opens, and after what it did.
 */
@NullMarked
package fourfold.screens.parent;

import org.jspecify.annotations.NullMarked;
