/** Child. */
@NullMarked
package fourfold.screens.child;

import org.jspecify.annotations.NullMarked;
