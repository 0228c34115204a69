// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import java.util.ArrayList;
import java.util.List;

/** Big digits made twice as wide and twice as tall, for windows with much room. */
final class Doubling {
    private Doubling() {}

    static List<String> of(List<String> rows) {
        List<String> doubled = new ArrayList<>(rows.size() * 2);
        for (String row : rows) {
            StringBuilder upper = new StringBuilder(row.length() * 2);
            StringBuilder lower = new StringBuilder(row.length() * 2);
            for (char c : row.toCharArray()) {
                upper.append(String.valueOf(half(c, '▀')).repeat(2));
                lower.append(String.valueOf(half(c, '▄')).repeat(2));
            }
            doubled.add(upper.toString());
            doubled.add(lower.toString());
        }
        return doubled;
    }

    /** What one half of a character becomes: a full block where there was ink in that half. */
    private static char half(char c, char inked) {
        if (c != '▀' && c != '▄') {
            return c;
        }
        return c == inked ? '█' : ' ';
    }
}
