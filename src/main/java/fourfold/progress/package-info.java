// SPDX-License-Identifier: Apache-2.0
/**
 * What the log adds up to as far as the choice of questions needs it: the mastery of each trace, what the parent's
 * actions come to, settings, rates, and the drill that is going on.
 *
 * <p>Begin with {@link fourfold.progress.Progress}, the fold of all answers. {@link fourfold.progress.FactMastery}
 * holds the rules for one trace, {@link fourfold.progress.Steering} the parent's actions,
 * {@link fourfold.progress.Setting} what can be set.
 *
 * <p>May use facts, log and memory. What a parent reads about it is worked out in insight, not here. No clock, no
 * chance, no input or output.
 */
@NullMarked
package fourfold.progress;

import org.jspecify.annotations.NullMarked;
