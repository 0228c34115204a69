/**
 * [pure] One sitting as a state machine: an event gives the next drill and the effects that must happen first.
 *
 * <p>{@link fourfold.drill.Drill#on} is the whole of it. {@link fourfold.drill.Phase} says what the child sees,
 * {@link fourfold.drill.Event} what can happen, {@link fourfold.drill.Effect} what the world must do.
 */
@NullMarked
package fourfold.drill;

import org.jspecify.annotations.NullMarked;
