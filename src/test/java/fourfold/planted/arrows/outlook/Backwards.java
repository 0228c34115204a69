// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.outlook;

import fourfold.insight.Grid;

/** Breaks the map on purpose: outlook does not know insight. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Grid it) {
        return it != null;
    }
}
