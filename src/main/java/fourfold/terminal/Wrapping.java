// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Text broken into lines at its blanks; a fact such as 7 × 8 = 56 stays whole, a word too long for a line does not. */
public final class Wrapping {
    private static final Pattern IN_A_FACT = Pattern.compile("(?<=\\d) (?=[×÷·:=+−] ?\\d)|(?<=[×÷·:=+−]) (?=\\d)");

    private static final char HELD = '\u00a0';

    private Wrapping() {}

    /** The lines, none wider than so many columns, of which there is one at least. */
    public static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word :
                IN_A_FACT.matcher(text).replaceAll(String.valueOf(HELD)).split(" ", -1)) {
            if (line.length() > 0 && Picture.columns(line + " " + word) > width) {
                lines.add(whole(line));
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
            int end = fitting(line.toString(), width);
            while (end < line.length()) {
                lines.add(whole(new StringBuilder(line.substring(0, end))));
                line.delete(0, end);
                end = fitting(line.toString(), width);
            }
        }
        lines.add(whole(line));
        return lines;
    }

    /** How many chars from the beginning fit, at least one sign: a file's name may have no blank anywhere. */
    private static int fitting(String line, int width) {
        int end = line.isEmpty() ? 0 : line.offsetByCodePoints(0, 1);
        while (end < line.length() && Picture.columns(line.substring(0, line.offsetByCodePoints(end, 1))) <= width) {
            end = line.offsetByCodePoints(end, 1);
        }
        return end;
    }

    private static String whole(StringBuilder line) {
        return line.toString().replace(HELD, ' ');
    }
}
