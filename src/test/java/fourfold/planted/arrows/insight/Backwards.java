// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.insight;

import fourfold.drill.Drill;

/** Breaks the map on purpose: insight does not know drill. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Drill it) {
        return it != null;
    }
}
