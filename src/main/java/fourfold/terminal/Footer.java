// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.ArrayList;
import java.util.List;

/** The keys of a page, in as many quiet lines at the foot as they need. */
public final class Footer {
    private static final String GAP = "   ";

    private Footer() {}

    /** Draws the keys; gives the row of the first line. */
    public static int draw(Picture picture, List<String> keys) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String key : keys) {
            if (line.length() > 0 && line.length() + GAP.length() + key.length() > picture.width() - 2) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? GAP : "").append(key);
        }
        lines.add(line.toString());
        int top = picture.height() - lines.size();
        for (int i = 0; i < lines.size(); i++) {
            picture.centred(top + i, lines.get(i), Ink.QUIET);
        }
        return top;
    }

    /** Says a line right above the keys, in as many lines as it needs; what stood there gives way to it. */
    public static void say(Picture picture, int above, String said) {
        List<String> lines = said.isEmpty() ? List.of() : Wrapping.lines(said, picture.width());
        for (int i = 0; i < lines.size(); i++) {
            int row = above - lines.size() + i;
            picture.text(0, row, " ".repeat(picture.width()), Ink.PLAIN);
            picture.centred(row, lines.get(i), Ink.STRONG);
        }
    }
}
