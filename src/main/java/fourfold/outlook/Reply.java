// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import java.time.Duration;

/**
 * What a learner does with a prompt.
 *
 * @param typed the digits typed; empty for no answer
 * @param firstKey from the prompt to the first digit; how long the child waited, if nothing was typed
 * @param whole from the prompt to Enter, at least {@code firstKey}
 */
public record Reply(String typed, Duration firstKey, Duration whole) {
    public Reply {
        if (firstKey.isNegative() || whole.compareTo(firstKey) < 0) {
            throw new IllegalArgumentException("Enter comes after the first key, not " + whole + " after " + firstKey);
        }
    }
}
