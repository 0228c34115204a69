/** Records. */
@NullMarked
package fourfold.records;

import org.jspecify.annotations.NullMarked;
