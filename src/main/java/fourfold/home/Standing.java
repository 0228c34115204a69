// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.insight.LifetimeProgress;
import fourfold.progress.Progress;

/**
 * Where a child stands.
 *
 * @param progress what holds now, for questions and levels
 * @param stones what was ever reached
 */
public record Standing(Progress progress, LifetimeProgress stones) {}
