// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.googlecode.lanterna.input.KeyStroke;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

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
        frame = Stream.of(Window.getWindows())
                .filter(Window::isShowing)
                .filter(JFrame.class::isInstance)
                .map(JFrame.class::cast)
                .findFirst()
                .orElseThrow();
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
