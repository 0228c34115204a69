package fourfold.terminal;

import java.util.ArrayList;
import java.util.List;

/** Text broken into lines at its blanks. */
public final class Wrapping {
    private Wrapping() {}

    public static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() > 0 && Picture.columns(line + " " + word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
