// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.input.KeyStroke;
import fourfold.commands.Fourfold;
import fourfold.commands.Practised;
import fourfold.commands.Rows;
import fourfold.screens.DigitReader;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The window with real keys on a real or virtual display; passed over where there is none. It is run by
 * {@code xvfb-run mvn test -Dtest=WindowOnADisplayTest -Dheadless=false}.
 */
class WindowOnADisplayTest {
    private WindowTerminal terminal;
    private JFrame frame;
    private Robot keyboard;

    @BeforeEach
    void openTheWindow() throws Exception {
        assumeTrue(!GraphicsEnvironment.isHeadless());
        keyboard = new Robot();
        keyboard.setAutoWaitForIdle(true);
        terminal = DesktopWindow.open(WindowSize.USUAL);
        frame = shown().orElseThrow();
        SwingUtilities.invokeAndWait(frame::toFront);
        keyboard.waitForIdle();
    }

    @AfterEach
    void closeTheWindow() throws Exception {
        if (frame != null) {
            SwingUtilities.invokeAndWait(frame::dispose);
        }
    }

    @Test
    void f11FillsTheScreenAndTheSecondF11BringsTheWindowBack() throws Exception {
        Dimension before = size();
        int letters = terminal.letters();
        Rectangle screen = frame.getGraphicsConfiguration().getBounds();
        press(KeyEvent.VK_F11);
        assertEquals(screen.getSize(), size());
        assertTrue(terminal.letters() > letters, "the letters grow with the window");
        press(KeyEvent.VK_F11);
        assertEquals(before, size());
    }

    @Test
    void controlWithPlusMakesTheLettersLargerAndWithNoughtUsualAgain() throws Exception {
        int rows = terminal.getTerminalSize().getRows();
        keyboard.keyPress(KeyEvent.VK_CONTROL);
        press(KeyEvent.VK_EQUALS);
        keyboard.keyRelease(KeyEvent.VK_CONTROL);
        assertNotEquals(rows, terminal.getTerminalSize().getRows());
        keyboard.keyPress(KeyEvent.VK_CONTROL);
        press(KeyEvent.VK_0);
        keyboard.keyRelease(KeyEvent.VK_CONTROL);
        assertEquals(rows, terminal.getTerminalSize().getRows());
    }

    @Test
    void aDigitComesAsThatDigitAndNeitherF11NorZoomKeysComeAsKeys() throws Exception {
        press(KeyEvent.VK_F11);
        press(KeyEvent.VK_F11);
        press(KeyEvent.VK_7);
        KeyStroke key = terminal.readInput();
        assertEquals('7', key.getCharacter());
    }

    @Test
    void closingTheWindowInADrillKeepsEveryAnswerThatWasGivenAndNotTheOpenOne(@TempDir Path folder) throws Exception {
        closeTheWindow();
        Path file = Practised.children(folder, "Mina");
        FutureTask<Integer> program = new FutureTask<>(
                () -> Fourfold.run(new String[] {"drill", "--store", file.toString(), "--child", "Mina"}));
        new Thread(program, "program").start();
        await(() -> shown().isPresent() && !text().isBlank());
        frame = shown().orElseThrow();
        press(KeyEvent.VK_ENTER);
        List<String> given = new ArrayList<>();
        while (given.size() < 4) {
            String before = given.isEmpty() ? "" : given.get(given.size() - 1);
            await(() -> asked().matches("\\d+") && !asked().equals(before));
            given.add(asked());
            type(asked());
            press(KeyEvent.VK_ENTER);
        }
        await(() -> asked().matches("\\d+") && !asked().equals(given.get(3)));
        type(asked().substring(0, 1));
        SwingUtilities.invokeAndWait(() -> frame.dispatchEvent(new WindowEvent(frame, WindowEvent.WINDOW_CLOSING)));
        assertEquals(0, program.get(60, TimeUnit.SECONDS));
        await(() -> !frame.isDisplayable());
        assertEquals(given, Rows.column(file, "select typed from answer order by position"));
        assertEquals(List.of("2"), Rows.column(file, "select distinct surface from answer"), "2 is the window");
    }

    private void type(String digits) throws Exception {
        for (char digit : digits.toCharArray()) {
            press(KeyEvent.VK_0 + digit - '0');
        }
    }

    private static Optional<JFrame> shown() {
        return Stream.of(Window.getWindows())
                .filter(Window::isShowing)
                .filter(JFrame.class::isInstance)
                .map(JFrame.class::cast)
                .findFirst();
    }

    /** What stands in the window now. */
    private static String text() {
        StringBuilder text = new StringBuilder();
        DesktopWindow window = (DesktopWindow) shown().orElseThrow().getContentPane();
        for (TextCharacter[] row : window.terminal.shown()) {
            Stream.of(row).map(TextCharacter::getCharacterString).forEach(text::append);
            text.append('\n');
        }
        return text.toString();
    }

    private static String asked() {
        return DigitReader.read(text()).orElse("");
    }

    /** Looks until it is so, a minute at most; the desktop's thread works off what waits there meanwhile. */
    private static void await(BooleanSupplier so) throws Exception {
        long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(1);
        while (!so.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it never came");
            SwingUtilities.invokeAndWait(() -> {});
        }
    }

    private void press(int key) throws Exception {
        keyboard.keyPress(key);
        keyboard.keyRelease(key);
        keyboard.waitForIdle();
        // Everything that the key set off on the desktop's thread is done once this is.
        SwingUtilities.invokeAndWait(() -> {});
    }

    private Dimension size() throws Exception {
        Dimension[] size = new Dimension[1];
        SwingUtilities.invokeAndWait(() -> size[0] = frame.getSize());
        return size[0];
    }
}
