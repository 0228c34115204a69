// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.only_terminal_and_screens_draw.records;

import com.googlecode.lanterna.TerminalSize;

/** Breaks the map on purpose: only terminal and screens draw. */
public final class Picture {
    private Picture() {}

    public static int width(TerminalSize size) {
        return size.getColumns();
    }
}
