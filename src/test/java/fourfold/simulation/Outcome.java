// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What came of one child's year under one policy.
 *
 * @param values of the measures; not a number where one has no meaning for this child
 * @param probes forecasts held against the truth; none where the policy foresees nothing
 */
public record Outcome(Map<Measure, Double> values, List<Probe> probes) {
    /** Minutes counted when a number of families is not reached in the year; more than all drills together last. */
    public static final double NEVER = 1300;

    public Outcome {
        values = new EnumMap<>(values);
        probes = List.copyOf(probes);
    }

    /** The value of one measure. */
    public double of(Measure measure) {
        return values.getOrDefault(measure, Double.NaN);
    }
}
