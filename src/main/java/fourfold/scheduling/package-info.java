/**
 * [pure] What to ask next, and when a new family joins.
 *
 * <p>{@link fourfold.scheduling.Scheduler} is the seam: same progress, instant and seed, same turn.
 */
@NullMarked
package fourfold.scheduling;

import org.jspecify.annotations.NullMarked;
