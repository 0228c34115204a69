// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.screens.child;

import fourfold.store.Store;

/** Breaks the map on purpose: screens.child does not know store. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Store it) {
        return it != null;
    }
}
