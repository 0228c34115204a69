/** Insight. */
@NullMarked
package fourfold.insight;

import org.jspecify.annotations.NullMarked;
