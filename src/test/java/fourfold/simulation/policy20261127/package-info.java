// SPDX-License-Identifier: Apache-2.0
/**
 * [pure] The policy of 27 November 2026 as it stood, so that later ones can be measured against it: its frame of turns, its
 * ranking, its memory and what it folds from the answers. A copy on purpose: nothing here may follow a change of the
 * program, and nothing here may be changed at all but to keep it compiling.
 *
 * <p>Begin with {@link fourfold.simulation.policy20261127.FrozenScheduler}. The simple policies and the ceilings of the
 * benchmark are rankings in the same frame. Shared with the program are only what was recorded ({@code log}), the drill so
 * far, the parent's steering, and the form of a turn.
 */
@NullMarked
package fourfold.simulation.policy20261127;

import org.jspecify.annotations.NullMarked;
