/** Home. */
@NullMarked
package fourfold.home;

import org.jspecify.annotations.NullMarked;
