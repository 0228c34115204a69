// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.awt.AWTError;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;

/**
 * A window on the desktop, for when the program was not started in a terminal. The page always fills it: the letters
 * follow the window's size; Ctrl + and Ctrl - and Ctrl 0 change how many rows there are, F11 fills the screen.
 */
final class DesktopWindow extends JPanel {
    private static final long serialVersionUID = 1;

    private static final int FEWEST_COLUMNS = 60;

    /** What is shown, and where keys go. */
    final transient WindowTerminal terminal;

    private final transient CellPainter painter;
    private final JFrame frame = new JFrame("Fourfold");
    private final int usualRows;
    private int rows;

    private DesktopWindow(WindowTerminal terminal, CellPainter painter, int rows) {
        this.terminal = terminal;
        this.painter = painter;
        this.rows = rows;
        this.usualRows = rows;
    }

    /** Whether there is a desktop to open a window on. */
    static boolean isPossible() {
        try {
            return !GraphicsEnvironment.isHeadless();
        } catch (AWTError | LinkageError e) {
            return false;
        }
    }

    /**
     * Opens the window and shows it.
     *
     * @throws TerminalException if the desktop refuses
     */
    static WindowTerminal open(WindowSize size) throws TerminalException {
        try {
            WindowTerminal terminal = new WindowTerminal(size.columns(), size.rows());
            CellPainter painter = new CellPainter(letters());
            SwingUtilities.invokeAndWait(() -> new DesktopWindow(terminal, painter, size.rows()).show(size));
            return terminal;
        } catch (HeadlessException | AWTError | LinkageError | IOException | FontFormatException e) {
            throw refused(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw refused(e);
        } catch (java.lang.reflect.InvocationTargetException e) {
            throw refused(e.getCause() == null ? e : e.getCause());
        }
    }

    private static TerminalException refused(Throwable why) {
        return new TerminalException(
                TerminalException.Reason.WINDOW, why.getClass().getSimpleName(), why);
    }

    /** The letters that come along; they have every sign the program draws. */
    static Font letters() throws IOException, FontFormatException {
        try (InputStream in = Objects.requireNonNull(DesktopWindow.class.getResourceAsStream("letters.ttf"))) {
            return Font.createFont(Font.TRUETYPE_FONT, in);
        }
    }

    private void show(WindowSize size) {
        Rectangle screen = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
        int most = Math.min(screen.height * 9 / 10 / size.rows(), screen.width * 9 / 10 * 2 / size.columns());
        int cell = Math.max(4, Math.min(size.cellHeight(), most));
        setPreferredSize(new Dimension(size.columns() * (cell / 2), size.rows() * cell));
        setBackground(Color.WHITE);
        setFocusable(true);
        setFocusTraversalKeysEnabled(false);
        addKeyListener(new Keys());
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                fit();
            }
        });
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                terminal.press(new KeyStroke(KeyType.EOF));
            }
        });
        frame.setIconImages(icons());
        frame.setContentPane(this);
        frame.pack();
        frame.setLocationByPlatform(true);
        terminal.tell(this::repaint, () -> SwingUtilities.invokeLater(frame::dispose));
        frame.setVisible(true);
        requestFocusInWindow();
    }

    private AffineTransform scale() {
        return getGraphicsConfiguration().getDefaultTransform();
    }

    private CellPainter.Cell cell() {
        return CellPainter.Cell.of((int) Math.round(getHeight() * scale().getScaleY()), rows);
    }

    /** As many columns as fill the width; fewer than a page needs are made room for by smaller letters. */
    private void fit() {
        int wide = (int) Math.round(getWidth() * scale().getScaleX());
        int columns = Math.max(FEWEST_COLUMNS, wide / cell().width());
        TerminalSize size = new TerminalSize(columns, rows);
        if (!size.equals(terminal.getTerminalSize())) {
            terminal.setTerminalSize(size);
        }
        terminal.letters(WindowSize.points((int) Math.round(cell().height() / scale().getScaleY())));
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        var sheet = terminal.shown();
        int wide = (int) Math.round(getWidth() * scale().getScaleX());
        CellPainter.Cell cell = cell();
        if (sheet[0].length * cell.width() > wide) {
            cell = new CellPainter.Cell(Math.max(2, wide / sheet[0].length), cell.height());
        }
        painter.paint((Graphics2D) g, sheet, cell, getWidth(), getHeight());
    }

    /** Larger or smaller letters, by fewer or more rows. */
    private void zoom(int by) {
        rows = by == 0 ? usualRows : WindowSize.zoomed(rows, by);
        fit();
    }

    private void fillScreen() {
        var device = getGraphicsConfiguration().getDevice();
        device.setFullScreenWindow(device.getFullScreenWindow() == null ? frame : null);
        requestFocusInWindow();
    }

    /** The four stones of a family, three of them laid, in the sizes that desktops ask for. */
    static List<Image> icons() {
        return Stream.of(16, 32, 48, 64, 128).map(DesktopWindow::icon).toList();
    }

    private static Image icon(int side) {
        BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        int gap = Math.max(1, side / 16);
        int stone = (side - 3 * gap) / 2;
        g.setColor(CellPainter.color(Theme.DARK.ground(), CellPainter.PAPER));
        g.fillRect(0, 0, side, side);
        g.setColor(CellPainter.color(Theme.DARK.of(Ink.STEP_4), CellPainter.PAPER));
        g.fillRect(gap, gap, stone, stone);
        g.fillRect(gap, 2 * gap + stone, stone, stone);
        g.fillRect(2 * gap + stone, 2 * gap + stone, stone, stone);
        g.dispose();
        return image;
    }

    private final class Keys extends KeyAdapter {
        @Override
        public void keyPressed(KeyEvent event) {
            if (event.getKeyCode() == KeyEvent.VK_F11) {
                fillScreen();
                return;
            }
            OptionalInt zoom = WindowKeys.zoom(event);
            zoom.ifPresent(DesktopWindow.this::zoom);
            if (zoom.isPresent()) {
                event.consume();
            } else {
                WindowKeys.pressed(event).ifPresent(terminal::press);
            }
        }

        @Override
        public void keyTyped(KeyEvent event) {
            WindowKeys.typed(event).ifPresent(terminal::press);
        }
    }
}
