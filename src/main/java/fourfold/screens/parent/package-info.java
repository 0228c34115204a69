/**
 * The parent's pages: grid, family, plan, rates, history, settings, print, and the gate before them.
 *
 * <p>Begin with {@link fourfold.screens.parent.GridPage}, where the parent arrives;
 * {@link fourfold.screens.parent.MorePage} leads to the others. {@link fourfold.screens.parent.StairsPicture} draws
 * the grid.
 *
 * <p>May use what screens may, screens itself, outlook, paper and upkeep. A page changes the records only through
 * home.
 */
@NullMarked
package fourfold.screens.parent;

import org.jspecify.annotations.NullMarked;
