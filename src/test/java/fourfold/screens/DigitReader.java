// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Reads the big digits back from a picture of the screen, as a child's eyes would: what is not legible is not found. */
public final class DigitReader {
    private static final String SIGNS = "0123456789×÷=?·:";

    private static final Map<String, List<String>> GLYPHS = new ConcurrentHashMap<>();

    private DigitReader() {}

    /** The first line of big signs from the top, such as {@code 7×8=}; empty if there is none. */
    public static Optional<String> read(String picture) {
        List<String> lines = picture.lines().toList();
        for (int y = 0; y < lines.size(); y++) {
            for (BigDigits.Size size : BigDigits.Size.values()) {
                for (boolean unicode : new boolean[] {true, false}) {
                    Optional<String> found = readAt(lines, y, size, unicode);
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<String> readAt(List<String> lines, int y, BigDigits.Size size, boolean unicode) {
        if (y + size.rows() > lines.size()) {
            return Optional.empty();
        }
        int step = BigDigits.width("00", size) - BigDigits.width("0", size);
        int widest = lines.stream().mapToInt(String::length).max().orElse(0);
        List<String> found = new ArrayList<>();
        for (int x = 0; x < widest; x++) {
            StringBuilder text = new StringBuilder();
            int at = x;
            Optional<Character> sign = sign(lines, y, at, size, unicode);
            while (sign.isPresent()) {
                text.append(sign.get());
                at += step;
                sign = sign(lines, y, at, size, unicode);
                // A single sign stands in the middle of a place for two, as nearly as whole cells allow.
                for (int half : List.of(step / 2, step - step / 2)) {
                    boolean follows = sign.isEmpty()
                            && sign(lines, y, at + half, size, unicode).isPresent();
                    at += follows ? half : 0;
                    sign = follows ? sign(lines, y, at, size, unicode) : sign;
                }
            }
            boolean alone = blank(lines, y, 0, x, size.rows()) && blank(lines, y, at, widest + 1, size.rows());
            if (text.length() > 0 && alone) {
                found.add(text.toString());
            }
        }
        return found.stream().max((a, b) -> Integer.compare(a.length(), b.length()));
    }

    private static Optional<Character> sign(List<String> lines, int y, int x, BigDigits.Size size, boolean unicode) {
        for (char c : SIGNS.toCharArray()) {
            List<String> rows = GLYPHS.computeIfAbsent(
                    size + " " + unicode + c, key -> BigDigits.rows(String.valueOf(c), size, unicode));
            boolean same = true;
            for (int i = 0; i < rows.size() && same; i++) {
                same = part(lines.get(y + i), x, x + rows.get(i).length()).equals(rows.get(i));
            }
            if (same) {
                return Optional.of(c);
            }
        }
        return Optional.empty();
    }

    private static boolean blank(List<String> lines, int y, int from, int to, int rows) {
        for (int i = 0; i < rows; i++) {
            if (!part(lines.get(y + i), from, to).isBlank()) {
                return false;
            }
        }
        return true;
    }

    private static String part(String line, int from, int to) {
        StringBuilder part = new StringBuilder();
        for (int x = from; x < to; x++) {
            part.append(x < line.length() ? line.charAt(x) : ' ');
        }
        return part.toString();
    }
}
