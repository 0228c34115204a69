// SPDX-License-Identifier: Apache-2.0
/**
 * One drill session as a state machine: an event gives the next drill and the effects that must happen before it
 * counts.
 *
 * <p>Begin with {@link fourfold.drill.Drill#on}. {@link fourfold.drill.Event} is what can happen,
 * {@link fourfold.drill.Phase} what the child sees, {@link fourfold.drill.Effect} what must be done outside, such as
 * keeping an answer.
 *
 * <p>May use facts, log, memory, progress and scheduling. It performs no effect itself; no clock, no chance, no
 * input or output.
 */
@NullMarked
package fourfold.drill;

import org.jspecify.annotations.NullMarked;
