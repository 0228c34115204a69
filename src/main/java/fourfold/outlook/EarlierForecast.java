// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import java.time.LocalDate;

/**
 * What would have been foretold for today on an earlier day, from the answers until then, beside what came.
 *
 * @param made the earlier day
 * @param low the 10th percentile of how many families would be fluent today
 * @param high the 90th
 * @param came how many are
 */
public record EarlierForecast(LocalDate made, int low, int high, int came) {
    /** Whether it came as foretold. */
    public boolean holds() {
        return low <= came && came <= high;
    }
}
