// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.pure_rooms_touch_nothing.drill;

import java.io.StringReader;

/** Breaks the map on purpose: the drill reads nothing. */
public final class Reader {
    private Reader() {}

    public static StringReader read() {
        return new StringReader("");
    }
}
