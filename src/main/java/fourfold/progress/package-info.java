/**
 * [pure] What the answers add up to: levels, due days, rates, the grid.
 *
 * <p>{@link fourfold.progress.Progress} is the fold of all answers under the parent's acts
 * ({@link fourfold.progress.Steering}). {@link fourfold.progress.FactMastery} holds the rules for one trace,
 * {@link fourfold.insight.Grid} what a parent sees of them.
 */
@NullMarked
package fourfold.progress;

import org.jspecify.annotations.NullMarked;
