// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TextCharacter;
import fourfold.screens.BigDigits;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against hairlines through a digit, blurred edges, and signs that the window's letters lack. */
class CellPainterTest {
    private static final int GROUND = rgb(Theme.LIGHT.ground());
    private static final int INK = rgb(Theme.LIGHT.of(Ink.PLAIN));

    private static int rgb(com.googlecode.lanterna.TextColor colour) {
        return new Color(colour.getRed(), colour.getGreen(), colour.getBlue()).getRGB();
    }

    private static TextCharacter[][] sheet(List<String> rows) {
        return rows.stream()
                .map(r -> r.chars()
                        .mapToObj(c -> Theme.LIGHT.cell((char) c, Ink.PLAIN))
                        .toArray(TextCharacter[]::new))
                .toArray(TextCharacter[][]::new);
    }

    private static BufferedImage painted(List<String> rows, int width, int height, double scale) throws Exception {
        BufferedImage image = new BufferedImage(
                (int) Math.round(width * scale), (int) Math.round(height * scale), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.scale(scale, scale);
        CellPainter.Cell cell = CellPainter.Cell.of(image.getHeight(), rows.size());
        new CellPainter(DesktopWindow.letters()).paint(g, sheet(rows), cell, width, height);
        g.dispose();
        return image;
    }

    private static long inked(BufferedImage image) {
        long inked = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int pixel = image.getRGB(x, y);
                assertTrue(pixel == INK || pixel == GROUND, "no pixel is half covered");
                inked += pixel == INK ? 1 : 0;
            }
        }
        return inked;
    }

    /** The 31 sizes at which antialiased letters showed seams at most; here every pixel of the area is ink. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.25, 1.5, 2})
    void fullBlocksMeetEdgeToEdgeAtEverySize(double scale) throws Exception {
        List<String> rows = Collections.nCopies(6, "██████");
        for (int height = 60; height <= 90; height++) {
            BufferedImage image = painted(rows, height, height, scale);
            CellPainter.Cell cell = CellPainter.Cell.of(image.getHeight(), 6);
            assertEquals(36L * cell.width() * cell.height(), inked(image), height + " at " + scale);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.25, 1.5, 2})
    void halvesLeaveNoLineBetweenThem(double scale) throws Exception {
        for (int height = 60; height <= 90; height++) {
            BufferedImage image = painted(List.of("▄▄▄▄", "▀▀▀▀", "▌▐▌▐"), height, height, scale);
            CellPainter.Cell cell = CellPainter.Cell.of(image.getHeight(), 3);
            long halves = 4L * cell.width() * (cell.height() - cell.height() / 2 + cell.height() / 2);
            long sides = 2L * cell.height() * (cell.width() / 2 + cell.width() - cell.width() / 2);
            assertEquals(halves + sides, inked(image), height + " at " + scale);
        }
    }

    /** A digit is its dots, each as large as the other: half a cell is one dot. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.25, 1.5, 2})
    void aTallDigitIsWhole(double scale) throws Exception {
        for (String digit : List.of("0", "7", "8", "×", "=")) {
            List<String> rows = BigDigits.rows(digit, BigDigits.Size.TALL, true);
            BufferedImage image = painted(rows, 60, 100, scale);
            CellPainter.Cell cell = CellPainter.Cell.of(image.getHeight(), rows.size());
            int upper = cell.height() / 2;
            long expected = rows.stream()
                    .flatMapToInt(String::chars)
                    .mapToLong(c -> cell.width()
                            * (long)
                                    (c == '█'
                                            ? cell.height()
                                            : c == '▀' ? upper : c == '▄' ? cell.height() - upper : 0))
                    .sum();
            assertEquals(expected, inked(image), digit);
        }
    }

    @Test
    void aLineGoesOnFromCellToCell() throws Exception {
        BufferedImage image = painted(List.of("┌──┐", "│  │", "└──┘"), 80, 120, 1);
        inked(image);
        int middle = 20;
        for (int x = 12; x < 68; x++) {
            int column = x;
            assertTrue(
                    java.util.stream.IntStream.range(middle - 4, middle + 4)
                            .anyMatch(y -> image.getRGB(column, y) == INK),
                    "a gap at " + x);
        }
    }

    @Test
    void theLettersHaveEverySignThatIsDrawn() throws Exception {
        Font letters = DesktopWindow.letters();
        String signs = "0123456789×÷·=?+−–äöüßÄÖÜéñáíóúÁ¿¡«»„“”’…↔↕←→↑↓►◄●▪ABCxyz";
        assertEquals(-1, letters.canDisplayUpTo(signs));
    }

    @Test
    void thePageFillsTheWindowWhateverItsSize() {
        for (int height = 200; height < 2200; height += 37) {
            for (int rows : new int[] {20, 24, 40, 60}) {
                CellPainter.Cell cell = CellPainter.Cell.of(height, rows);
                assertTrue(height - cell.height() * rows < rows, "less than a pixel a row is left over");
            }
        }
    }

    @Test
    void theIconIsThereInEverySize() {
        assertEquals(5, DesktopWindow.icons().size());
    }
}
