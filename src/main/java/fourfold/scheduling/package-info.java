/**
 * What to ask next, and when a new family joins.
 *
 * <p>Begin with {@link fourfold.scheduling.Scheduler}: the same progress, instant and seed give the same turn.
 * {@link fourfold.scheduling.TurnFrame} keeps what holds for every policy (pairs, second tries, gaps, beginning and
 * end); {@link fourfold.scheduling.LastingGain} is the program's policy, a {@link fourfold.scheduling.Ranking} that
 * plugs into it.
 *
 * <p>May use facts, log, memory and progress. Chance comes from the seed alone; no clock, no input or output.
 */
@NullMarked
package fourfold.scheduling;

import org.jspecify.annotations.NullMarked;
