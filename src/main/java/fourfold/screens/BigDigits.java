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
        /** Ten rows, twelve columns to a sign: the tall ones, twice. */
        TALLEST(10, 12, 4),
        /** Eight rows, nine columns to a sign: the tall ones, half as large again. */
        TALLER(8, 9, 3),
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

    // Which column and row of a tall sign each dot of a larger one is, so that every stroke is equally thick and × and
    // ÷ are the same above and below: a ÷ with its dots close to the line would be read as a plus. -1 is empty.
    private static final int[] TALLER_COLUMNS = {0, 1, 1, 2, 2, 3, 4, 4, 5};
    private static final int[] TALLER_ROWS = {-1, 0, 1, 1, 2, 3, 3, 4, 4, 5, 6, 6, 7, 8, 8, 9};
    private static final int[] TALLEST_COLUMNS = {0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5};
    private static final int[] TALLEST_ROWS = {0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9};

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
        return switch (size) {
            case SMALL -> unicode ? halved(picture(text, size, SMALL_DOTS)) : ascii(picture(text, size, SMALL_ASCII));
            case TALL -> unicode ? halved(picture(text, size, TALL_DOTS)) : ascii(picture(text, size, TALL_ASCII));
            case TALLER, TALLEST -> unicode ? halved(stretched(text, size)) : inked(halved(stretched(text, size)));
        };
    }

    private static List<String> picture(String text, Size size, String block) {
        String gap = ".".repeat(size.gap);
        List<String> picture = new ArrayList<>();
        for (String line : block.lines().toList()) {
            picture.add(String.join(
                    gap,
                    text.chars()
                            .mapToObj(c -> box((char) c, size.columns, line))
                            .toList()));
        }
        return picture;
    }

    private static String box(char c, int columns, String line) {
        int place = KNOWN.indexOf(c);
        if (place < 0) {
            throw new IllegalArgumentException("no big picture of \"" + c + "\", only of " + KNOWN);
        }
        int from = place * (columns + 1);
        return c == ' ' ? ".".repeat(columns) : line.substring(from, from + columns);
    }

    /** The tall signs, larger. */
    private static List<String> stretched(String text, Size size) {
        int[] columns = size == Size.TALLER ? TALLER_COLUMNS : TALLEST_COLUMNS;
        List<String> lines = TALL_DOTS.lines().toList();
        List<String> picture = new ArrayList<>();
        for (int row : size == Size.TALLER ? TALLER_ROWS : TALLEST_ROWS) {
            StringBuilder dots = new StringBuilder();
            for (int i = 0; i < text.length(); i++) {
                String box = box(text.charAt(i), Size.TALL.columns, lines.get(Math.max(0, row)));
                dots.append(".".repeat(i == 0 ? 0 : size.gap));
                for (int column : columns) {
                    dots.append(row < 0 ? '.' : box.charAt(column));
                }
            }
            picture.add(dots.toString());
        }
        return picture;
    }

    private static List<String> ascii(List<String> dots) {
        return dots.stream().map(row -> row.replace('.', ' ')).toList();
    }

    /** Ink wherever there is half a block. */
    private static List<String> inked(List<String> blocks) {
        return blocks.stream().map(row -> row.replaceAll("[█▀▄]", "#")).toList();
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
