/** Paper. */
@NullMarked
package fourfold.paper;

import org.jspecify.annotations.NullMarked;
