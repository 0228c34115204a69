/**
 * The child's pages: who practises, for how long, the drill, its end, and the tour.
 *
 * <p>Begin with {@link fourfold.screens.child.HomePage} and {@link fourfold.screens.child.DrillPage}, a drill as it is
 * shown; {@link fourfold.screens.child.DrillTurn} works out what follows from an event,
 * {@link fourfold.screens.child.DrillEffect} is what it asks of the file, {@link fourfold.screens.child.DrillPicture}
 * draws it, {@link fourfold.screens.child.DrillKeys} gives keys their meaning.
 *
 * <p>May use what screens may, screens itself, scheduling, and screens.parent, which it opens behind the gate. A
 * child never sees jargon, a comparison with others, or blame.
 */
@NullMarked
package fourfold.screens.child;

import org.jspecify.annotations.NullMarked;
