// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;

/**
 * Paints a sheet of characters on whole device pixels: blocks and lines as filled rectangles that meet edge to edge, so
 * that no hairline of ground runs through a digit at any size or scale; letters one to a cell.
 */
final class CellPainter {
    static final TextColor PAPER = new TextColor.RGB(255, 255, 255);
    private static final TextColor INK = new TextColor.RGB(0, 0, 0);

    private final Font letters;

    CellPainter(Font letters) {
        this.letters = letters;
    }

    /**
     * The size of a cell in device pixels.
     *
     * @param width columns of pixels
     * @param height rows of pixels
     */
    record Cell(int width, int height) {
        /** The largest for so many rows; a cell is half as wide as it is tall. */
        static Cell of(int deviceHeight, int rows) {
            int height = Math.max(4, deviceHeight / rows);
            return new Cell(Math.max(2, height / 2), height);
        }
    }

    /**
     * Paints all of it; what is left at the edges becomes ground.
     *
     * @param g what to paint on; its scale is undone
     * @param sheet rows of characters
     * @param cell the size of each
     * @param width of the whole area, in user units
     * @param height of the whole area, in user units
     */
    void paint(Graphics2D g, TextCharacter[][] sheet, Cell cell, double width, double height) {
        AffineTransform scale = g.getTransform();
        int left = (int) Math.round(scale.getTranslateX());
        int top = (int) Math.round(scale.getTranslateY());
        int wide = (int) Math.round(width * scale.getScaleX());
        int tall = (int) Math.round(height * scale.getScaleY());
        g.setTransform(AffineTransform.getTranslateInstance(left, top));
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(color(sheet[0][0].getBackgroundColor(), PAPER));
        g.fillRect(0, 0, wide, tall);
        int x0 = Math.max(0, (wide - sheet[0].length * cell.width) / 2);
        int y0 = Math.max(0, (tall - sheet.length * cell.height) / 2);
        Font fitted = fitted(cell, g.getFontRenderContext());
        for (int row = 0; row < sheet.length; row++) {
            for (int column = 0; column < sheet[row].length; column++) {
                character(g, sheet[row][column], x0 + column * cell.width, y0 + row * cell.height, cell, fitted);
            }
        }
        g.setTransform(scale);
    }

    private void character(Graphics2D g, TextCharacter c, int x, int y, Cell cell, Font fitted) {
        Color paper = color(c.getBackgroundColor(), PAPER);
        Color ink = color(c.getForegroundColor(), INK);
        g.setColor(c.isReversed() ? ink : paper);
        g.fillRect(x, y, cell.width, cell.height);
        g.setColor(c.isReversed() ? paper : ink);
        char sign = c.getCharacterString().charAt(0);
        if (sign != ' ' && !block(g, sign, x, y, cell) && !line(g, sign, x, y, cell) && !dot(g, sign, x, y, cell)) {
            g.setFont(fitted);
            LineMetrics metrics = fitted.getLineMetrics("0", g.getFontRenderContext());
            float air = cell.height - metrics.getAscent() - metrics.getDescent();
            int baseline = y + Math.round(air / 2 + metrics.getAscent());
            g.drawString(c.getCharacterString(), x, baseline);
            if (c.isBold()) {
                // The letters that come along have one weight: struck twice they are bold.
                g.drawString(c.getCharacterString(), x + Math.max(1, cell.width / 12), baseline);
            }
        }
    }

    /** Halves meet in the middle: the upper is rounded down, the lower has the rest. */
    private static boolean block(Graphics2D g, char sign, int x, int y, Cell cell) {
        int half = cell.height / 2;
        int side = cell.width / 2;
        switch (sign) {
            case '█' -> g.fillRect(x, y, cell.width, cell.height);
            case '▀' -> g.fillRect(x, y, cell.width, half);
            case '▄' -> g.fillRect(x, y + half, cell.width, cell.height - half);
            case '▌' -> g.fillRect(x, y, side, cell.height);
            case '▐' -> g.fillRect(x + side, y, cell.width - side, cell.height);
            default -> {
                return false;
            }
        }
        return true;
    }

    /** Light lines, an eighth of a cell's width, which reach the cell's edge where they go on. */
    private static boolean line(Graphics2D g, char sign, int x, int y, Cell cell) {
        int place = "─│┌┐└┘├┤┬┴┼".indexOf(sign);
        if (place < 0) {
            return false;
        }
        int thick = Math.max(1, cell.width / 8);
        int middle = (cell.width - thick) / 2;
        int centre = (cell.height - thick) / 2;
        boolean toLeft = "─┐┘┤┬┴┼".indexOf(sign) >= 0;
        boolean toRight = "─┌└├┬┴┼".indexOf(sign) >= 0;
        boolean up = "│└┘├┤┴┼".indexOf(sign) >= 0;
        boolean down = "│┌┐├┤┬┼".indexOf(sign) >= 0;
        if (toLeft) {
            g.fillRect(x, y + centre, middle + thick, thick);
        }
        if (toRight) {
            g.fillRect(x + middle, y + centre, cell.width - middle, thick);
        }
        if (up) {
            g.fillRect(x + middle, y, thick, centre + thick);
        }
        if (down) {
            g.fillRect(x + middle, y + centre, thick, cell.height - centre);
        }
        return true;
    }

    private static boolean dot(Graphics2D g, char sign, int x, int y, Cell cell) {
        if (sign == '▪') {
            int side = Math.max(1, cell.width / 2);
            g.fillRect(x + (cell.width - side) / 2, y + (cell.height - side) / 2, side, side);
            return true;
        }
        if (sign != '●') {
            return false;
        }
        double wide = cell.width * 0.9;
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.fill(new Ellipse2D.Double(x + (cell.width - wide) / 2, y + (cell.height - wide) / 2, wide, wide));
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
        return true;
    }

    /** The largest letters that fit into a cell. */
    private Font fitted(Cell cell, FontRenderContext context) {
        Font large = letters.deriveFont(100f);
        Rectangle2D bounds = large.getStringBounds("0", context);
        double points = Math.min(cell.width * 100 / bounds.getWidth(), cell.height * 100 / bounds.getHeight());
        return letters.deriveFont((float) Math.max(1, points));
    }

    static Color color(TextColor colour, TextColor usual) {
        TextColor shown = colour == TextColor.ANSI.DEFAULT ? usual : colour;
        return new Color(shown.getRed(), shown.getGreen(), shown.getBlue());
    }
}
