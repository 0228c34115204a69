/** Tests of the store. */
@NullMarked
package fourfold.store;

import org.jspecify.annotations.NullMarked;
