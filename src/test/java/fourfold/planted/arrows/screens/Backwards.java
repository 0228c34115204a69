// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.screens;

import fourfold.outlook.Outlook;

/** Breaks the map on purpose: screens does not know outlook. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Outlook it) {
        return it != null;
    }
}
