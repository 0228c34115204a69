// SPDX-License-Identifier: Apache-2.0
/**
 * The child's pages: who practises, for how long, the drill, its end, and the tour.
 *
 * <p>Begin with {@link fourfold.screens.child.HomePage} and {@link fourfold.screens.child.DrillPage}, a drill as it is
 * shown; {@link fourfold.screens.child.DrillTurn} works out what follows from an event,
 * {@link fourfold.screens.child.DrillEffect} is what it asks of the file, {@link fourfold.screens.child.DrillPicture}
 * draws it on {@link fourfold.screens.child.Shelves}, its fixed places;
 * {@link fourfold.screens.child.DrillKeys} gives keys their meaning, {@link fourfold.screens.child.RefusedKey} says why a
 * key did nothing. {@link fourfold.screens.child.SummaryPicture} is the end.
 *
 * <p>May use what screens may, screens itself, scheduling, and screens.parent, which it opens behind the gate. A
 * child never sees jargon, a comparison with others, or blame.
 */
@NullMarked
package fourfold.screens.child;

import org.jspecify.annotations.NullMarked;
