// SPDX-License-Identifier: Apache-2.0
/**
 * [pure] Simulated children and the benchmark of policies: who would be fluent when, if a child learned like this.
 *
 * <p>{@link fourfold.simulation.SimulatedLearnerKind} is the seam: any kind of child on the class path takes part, with a
 * calendar of its own. {@link fourfold.simulation.SchoolYear} lets a child practise through the real drill in simulated
 * time; {@link fourfold.simulation.Measure} says what is measured. The command, the policies and the rules of fairness
 * stand in {@code src/test/resources/simulation/README.md}.
 */
@NullMarked
package fourfold.simulation;

import org.jspecify.annotations.NullMarked;
