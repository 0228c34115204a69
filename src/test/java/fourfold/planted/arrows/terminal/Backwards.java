// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.terminal;

import fourfold.progress.Progress;

/** Breaks the map on purpose: terminal does not know progress. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Progress it) {
        return it != null;
    }
}
