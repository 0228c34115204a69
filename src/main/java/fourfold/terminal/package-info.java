/** Terminal. */
@NullMarked
package fourfold.terminal;

import org.jspecify.annotations.NullMarked;
