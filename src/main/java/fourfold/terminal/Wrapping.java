package fourfold.terminal;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Text broken into lines at its blanks; a fact such as 7 × 8 = 56 stays whole. */
public final class Wrapping {
    private static final Pattern IN_A_FACT = Pattern.compile("(?<=\\d) (?=[×÷·:=+−] ?\\d)|(?<=[×÷·:=+−]) (?=\\d)");

    private static final char HELD = '\u00a0';

    private Wrapping() {}

    /** The lines, none wider than so many columns unless a single word is. */
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
        }
        lines.add(whole(line));
        return lines;
    }

    private static String whole(StringBuilder line) {
        return line.toString().replace(HELD, ' ');
    }
}
