// SPDX-License-Identifier: Apache-2.0
/**
 * What to ask next, and when a new family joins.
 *
 * <p>Begin with {@link fourfold.scheduling.Scheduler}: the same progress, instant and seed give the same turn.
 * {@link fourfold.scheduling.LastingGain} is the program's policy; {@link fourfold.scheduling.Choice} has the order of
 * turns, {@link fourfold.scheduling.Rails} what may not follow what, {@link fourfold.scheduling.PracticeValue} what is due
 * and gains most.
 *
 * <p>May use facts, log, memory and progress. Chance comes from the seed alone; no clock, no input or output.
 */
@NullMarked
package fourfold.scheduling;

import org.jspecify.annotations.NullMarked;
