// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Numbers and the signs of a question as pictures made of characters, for eyes that are eight years old. */
public final class BigDigits {
    private static final String KNOWN = "0123456789×÷=?·: ";

    /** How tall the pictures are. */
    public enum Size {
        /** Five rows, six columns to a sign. */
        TALL(5, 6, 2),
        /** Three rows, four columns to a sign. */
        SMALL(3, 4, 1);

        private final int rows;
        private final int columns;
        private final int gap;

        Size(int rows, int columns, int gap) {
            this.rows = rows;
            this.columns = columns;
            this.gap = gap;
        }

        /** Rows of every picture. */
        public int rows() {
            return rows;
        }
    }

    // Each sign stands in a box; # is ink. Two rows of dots make one row of half blocks.
    private static final String TALL_DOTS = """
            .####. ..##.. .####. #####. ##..## ###### .##### ###### .####. .####. ...... ...... ...... .####. ...... ......
            ###### .###.. ###### ###### ##..## ###### ###### ###### ###### ###### ##..## ..##.. ...... ###### ...... ..##..
            ##..## ####.. ##..## ....## ##..## ##.... ##.... ....## ##..## ##..## .####. ..##.. ###### ##..## ...... ..##..
            ##..## ..##.. ....## ....## ##..## ##.... ##.... ...##. ##..## ##..## ..##.. ...... ###### ....## ...... ......
            ##..## ..##.. ...##. .####. ###### #####. #####. ...##. .####. .##### ..##.. ###### ...... ...##. ..##.. ......
            ##..## ..##.. ..##.. .####. ###### ###### ###### ..##.. .####. ..#### .####. ###### ...... ..##.. ..##.. ......
            ##..## ..##.. .##... ....## ....## ....## ##..## ..##.. ##..## ....## ##..## ...... ###### ..##.. ...... ......
            ##..## ..##.. ##.... ....## ....## ....## ##..## ..##.. ##..## ....## ...... ..##.. ###### ...... ...... ..##..
            ###### ###### ###### ###### ....## ###### ###### ..##.. ###### ###### ...... ..##.. ...... ..##.. ...... ..##..
            .####. ###### ###### #####. ....## #####. .####. ..##.. .####. #####. ...... ...... ...... ..##.. ...... ......
            """;

    private static final String SMALL_DOTS = """
            .##. .#.. .##. ###. #..# #### .##. #### .##. .##. .... .... .... .##. .... ....
            #..# ##.. #..# ...# #..# #... #... ...# #..# #..# #..# .##. #### #..# .... .##.
            #..# .#.. ...# .##. #..# ###. ###. ..#. .##. #..# .##. .... .... ...# .##. ....
            #..# .#.. .##. ...# #### ...# #..# ..#. #..# .### .##. #### .... .##. .##. ....
            #..# .#.. #... ...# ...# ...# #..# .#.. #..# ...# #..# .... #### .... .... .##.
            .##. ###. #### ###. ...# ###. .##. .#.. .##. .##. .... .##. .... .#.. .... ....
            """;

    private static final String TALL_ASCII = """
            .####. ..##.. .####. #####. ##..## ###### .####. ###### .####. .####. ...... ..##.. ...... .####. ...... ......
            ##..## .###.. ##..## ....## ##..## ##.... ##.... ....## ##..## ##..## ##..## ...... ###### ##..## ...... ..##..
            ##..## ..##.. ...##. ..###. ###### #####. #####. ...##. .####. .##### ..##.. ###### ...... ...##. ..##.. ......
            ##..## ..##.. ..##.. ....## ....## ....## ##..## ..##.. ##..## ....## ##..## ...... ###### ...... ...... ..##..
            .####. ###### ###### #####. ....## #####. .####. ..##.. .####. .####. ...... ..##.. ...... ..##.. ...... ......
            """;

    // Strokes instead of ink: three rows of # could not tell 6, 8 and 9 apart.
    private static final String SMALL_ASCII = """
            .__. .... .__. .__. .... .__. .__. .__. .__. .__. .... .o.. .... .__. .... .oo.
            |..| ./|. .__| .__| |__| |__. |__. .../ |__| |__| .\\/. ---. .__. .._/ .oo. ....
            |__| ._|_ |__. .__| ...| .__| |__| ../. |__| .__| ./\\. .o.. .__. ..o. .... .oo.
            """;

    private BigDigits() {}

    /** Columns that {@link #rows} needs for a text. */
    public static int width(String text, Size size) {
        return text.isEmpty() ? 0 : text.length() * (size.columns + size.gap) - size.gap;
    }

    /**
     * Draws a text in rows of equal length.
     *
     * @param text digits, ×, ÷, ·, :, =, ? and blanks
     * @param size how tall
     * @param unicode whether half blocks may be used; otherwise ASCII alone
     * @return as many rows as the size says
     * @throws IllegalArgumentException if the text has another character
     */
    public static List<String> rows(String text, Size size, boolean unicode) {
        List<String> dots = picture(text, size, lines(size, unicode));
        return unicode
                ? halved(dots)
                : dots.stream().map(row -> row.replace('.', ' ')).toList();
    }

    private static List<String> lines(Size size, boolean unicode) {
        String block = size == Size.TALL ? (unicode ? TALL_DOTS : TALL_ASCII) : (unicode ? SMALL_DOTS : SMALL_ASCII);
        return block.lines().toList();
    }

    private static List<String> picture(String text, Size size, List<String> lines) {
        String gap = ".".repeat(size.gap);
        List<String> picture = new ArrayList<>();
        for (String line : lines) {
            picture.add(String.join(
                    gap, text.chars().mapToObj(c -> box((char) c, size, line)).toList()));
        }
        return picture;
    }

    private static String box(char c, Size size, String line) {
        int place = KNOWN.indexOf(c);
        if (place < 0) {
            throw new IllegalArgumentException("no big picture of \"" + c + "\", only of " + KNOWN);
        }
        int from = place * (size.columns + 1);
        return c == ' ' ? ".".repeat(size.columns) : line.substring(from, from + size.columns);
    }

    private static List<String> halved(List<String> dots) {
        return IntStream.range(0, dots.size() / 2)
                .mapToObj(row -> halved(dots.get(2 * row), dots.get(2 * row + 1)))
                .toList();
    }

    private static String halved(String upper, String lower) {
        StringBuilder row = new StringBuilder(upper.length());
        for (int i = 0; i < upper.length(); i++) {
            boolean above = upper.charAt(i) == '#';
            boolean below = lower.charAt(i) == '#';
            row.append(above ? (below ? '█' : '▀') : (below ? '▄' : ' '));
        }
        return row.toString();
    }
}
