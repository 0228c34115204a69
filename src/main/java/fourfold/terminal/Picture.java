// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalTextUtils;
import com.googlecode.lanterna.screen.Screen;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;

/**
 * What a page draws on: a sheet of single characters, each with its ink. Only what changed since the last showing goes
 * to the screen.
 */
public final class Picture {
    /** The second half of a wide character. */
    private static final char COVERED = '\0';

    private final int width;
    private final int height;
    private final boolean unicode;
    private final char[] letters;
    private final Ink[] inks;

    /** An empty sheet. */
    public Picture(int width, int height, boolean unicode) {
        this.width = Math.max(1, width);
        this.height = Math.max(1, height);
        this.unicode = unicode;
        letters = new char[this.width * this.height];
        inks = new Ink[this.width * this.height];
        Arrays.fill(letters, ' ');
        Arrays.fill(inks, Ink.PLAIN);
    }

    /** Columns. */
    public int width() {
        return width;
    }

    /** Rows. */
    public int height() {
        return height;
    }

    /** Whether more than ASCII can be shown. */
    public boolean unicode() {
        return unicode;
    }

    /**
     * Writes text from a place to the right; what does not fit is cut off. Control characters become question marks, so
     * no name can steer the terminal.
     */
    public void text(int x, int y, String text, Ink ink) {
        int at = x;
        for (char c : drawable(text).toCharArray()) {
            boolean wide = TerminalTextUtils.isCharCJK(c);
            if (y < 0 || y >= height || at + (wide ? 1 : 0) >= width) {
                return;
            }
            if (at >= 0) {
                put(at, y, c, ink);
                if (wide) {
                    put(at + 1, y, COVERED, ink);
                }
            }
            at += wide ? 2 : 1;
        }
    }

    /** Plain text. */
    public void text(int x, int y, String text) {
        text(x, y, text, Ink.PLAIN);
    }

    /** Text in the middle of a row. */
    public void centred(int y, String text, Ink ink) {
        text(Math.max(0, (width - columns(text)) / 2), y, text, ink);
    }

    /** Text that ends at the right edge. */
    public void right(int y, String text, Ink ink) {
        text(Math.max(0, width - columns(text)), y, text, ink);
    }

    /** Several rows as one block, its middle in the middle of the sheet. */
    public void centredBlock(int y, List<String> rows, Ink ink) {
        int widest = rows.stream().mapToInt(Picture::columns).max().orElse(0);
        int x = Math.max(0, (width - widest) / 2);
        for (int i = 0; i < rows.size(); i++) {
            text(x, y + i, rows.get(i), ink);
        }
    }

    /** How many columns a text takes. */
    public static int columns(String text) {
        int columns = 0;
        for (char c : drawable(text).toCharArray()) {
            columns += TerminalTextUtils.isCharCJK(c) ? 2 : 1;
        }
        return columns;
    }

    /** One row as text, without blanks at its end. */
    public String row(int y) {
        StringBuilder row = new StringBuilder();
        for (int x = 0; x < width; x++) {
            char c = letters[y * width + x];
            if (c != COVERED) {
                row.append(c);
            }
        }
        return row.toString().stripTrailing();
    }

    /** The whole sheet as text, row by row. */
    @Override
    public String toString() {
        StringBuilder all = new StringBuilder();
        for (int y = 0; y < height; y++) {
            all.append(row(y)).append('\n');
        }
        return all.toString();
    }

    /** Hands to the screen what differs from {@code before}, or everything if that had another size. */
    void show(Screen screen, Picture before, Theme theme) {
        boolean all = before.width != width || before.height != height;
        for (int i = 0; i < letters.length; i++) {
            if ((all || letters[i] != before.letters[i] || inks[i] != before.inks[i]) && letters[i] != COVERED) {
                screen.setCharacter(i % width, i / width, theme.cell(letters[i], inks[i]));
            }
        }
    }

    private void put(int x, int y, char c, Ink ink) {
        letters[y * width + x] = unicode || c == COVERED ? c : AsciiLook.of(c);
        inks[y * width + x] = ink;
    }

    private static String drawable(String text) {
        return text.chars().allMatch(Picture::isPlain) ? text : fitted(BidiText.order(text));
    }

    /**
     * Whether a character can be drawn as it is whatever stands beside it: Latin letters and signs, dashes and quotes,
     * arrows, lines and blocks, which no normal form joins to others. It keeps the large tables of the others unread.
     */
    private static boolean isPlain(int c) {
        return (c >= ' ' && c < 0x7f)
                || (c >= 0xa0 && c < 0x300 && c != 0xad)
                || (c >= 0x2010 && c < 0x2028)
                || (c >= 0x2190 && c < 0x2200)
                || (c >= 0x2500 && c < 0x2600);
    }

    private static String fitted(String text) {
        StringBuilder kept = new StringBuilder(text.length());
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(c -> {
            int type = Character.getType(c);
            if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
                return;
            }
            boolean unfit = Character.isISOControl(c) || c > 0xffff || type == Character.SURROGATE;
            kept.append(unfit ? '?' : (char) c);
        });
        return kept.toString();
    }
}
