// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.log;

import fourfold.memory.Memory;

/** Breaks the map on purpose: log does not know memory. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Memory it) {
        return it != null;
    }
}
