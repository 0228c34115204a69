/** Plain. */
@NullMarked
package fourfold.plain;

import org.jspecify.annotations.NullMarked;
