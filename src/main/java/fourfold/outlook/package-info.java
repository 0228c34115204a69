// SPDX-License-Identifier: Apache-2.0
/**
 * The look ahead: learners fitted to a child's answers practise on through the real drill, many times over, until
 * all families are fluent.
 *
 * <p>Begin with {@link fourfold.outlook.Outlook}, which gives a {@link fourfold.outlook.Projection};
 * {@link fourfold.outlook.FittedLearner} is the child as the memory model sees it,
 * {@link fourfold.outlook.PlayedDrill} one drill of it.
 *
 * <p>May use facts, log, memory, progress, scheduling and drill. Chance comes from seeds, time is simulated; no
 * clock, no input or output.
 */
@NullMarked
package fourfold.outlook;

import org.jspecify.annotations.NullMarked;
