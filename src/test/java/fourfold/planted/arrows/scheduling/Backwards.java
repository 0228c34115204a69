// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.scheduling;

import fourfold.drill.Drill;

/** Breaks the map on purpose: scheduling does not know drill. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Drill it) {
        return it != null;
    }
}
