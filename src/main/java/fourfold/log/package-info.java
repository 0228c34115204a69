/** Log. */
@NullMarked
package fourfold.log;

import org.jspecify.annotations.NullMarked;
