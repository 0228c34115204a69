// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.words;

import fourfold.terminal.Picture;

/** Breaks the map on purpose: words does not know terminal. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Picture it) {
        return it != null;
    }
}
