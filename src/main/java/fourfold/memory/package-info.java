/** [pure] How a trace is learned and fades. */
@NullMarked
package fourfold.memory;

import org.jspecify.annotations.NullMarked;
