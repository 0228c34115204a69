// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.arrows.records;

import fourfold.words.Words;

/** Breaks the map on purpose: records does not know words. */
public final class Backwards {
    private Backwards() {}

    public static boolean isThere(Words it) {
        return it != null;
    }
}
