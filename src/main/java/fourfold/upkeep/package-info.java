/** Upkeep. */
@NullMarked
package fourfold.upkeep;

import org.jspecify.annotations.NullMarked;
