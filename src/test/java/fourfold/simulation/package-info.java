/**
 * [pure] Simulated children and the benchmark of policies: who would be fluent when, if a child learned like this.
 *
 * <p>{@link fourfold.simulation.SimulatedLearnerKind} is the seam: any kind of child on the class path takes part.
 * {@link fourfold.simulation.SchoolYear} lets a child practise through the real drill in simulated time.
 *
 * <p>Fairness, the same for every policy:
 *
 * <ol>
 *   <li>Same children, same calendar, same missed days, same lessons: they hang on the child's seed alone.
 *   <li>Numbers are chosen on {@link fourfold.simulation.Seeds#TUNING} only and told from
 *       {@link fourfold.simulation.Seeds#REPORTING} only.
 *   <li>A policy sees answers and times, never the child. Only those named oracle see the true memory.
 *   <li>Every policy works in the same frame of turns ({@link fourfold.scheduling.TurnFrame}): pairs, re-asks, gaps, openings,
 *       endings. Only its ranking differs, and how many may wait; that number is tuned with the same care for all.
 *   <li>Only one kind of children shares its equations with the scheduler's memory. The kinds' numbers come from published
 *       data and papers alone and were fixed before any policy was run on them ({@code simulation/kinds.md} and
 *       {@code evidence/table.txt} in the test resources).
 *   <li>What is measured is the true chance to be right within three seconds, the time of the hands to the first key
 *       counted in, never the program's own levels.
 * </ol>
 */
@NullMarked
package fourfold.simulation;

import org.jspecify.annotations.NullMarked;
