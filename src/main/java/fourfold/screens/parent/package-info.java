/** Parent. */
@NullMarked
package fourfold.screens.parent;

import org.jspecify.annotations.NullMarked;
