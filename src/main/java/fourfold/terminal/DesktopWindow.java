package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.DefaultTerminalFactory;
import com.googlecode.lanterna.terminal.Terminal;
import com.googlecode.lanterna.terminal.swing.AWTTerminalFontConfiguration;
import com.googlecode.lanterna.terminal.swing.SwingTerminalFontConfiguration;
import java.awt.AWTError;
import java.awt.Font;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;

/** A window on the desktop, for when the program was not started in a terminal. */
final class DesktopWindow {
    private DesktopWindow() {}

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
    static Terminal open(WindowSize size) throws TerminalException {
        try {
            Font[] fonts = AWTTerminalFontConfiguration.filterMonospaced(
                    new Font("DejaVu Sans Mono", Font.PLAIN, size.points()),
                    new Font(Font.MONOSPACED, Font.PLAIN, size.points()));
            return new DefaultTerminalFactory()
                    .setTerminalEmulatorTitle("Fourfold")
                    .setInitialTerminalSize(new TerminalSize(size.columns(), size.rows()))
                    .setTerminalEmulatorFontConfiguration(SwingTerminalFontConfiguration.newInstance(fonts))
                    .createTerminalEmulator();
        } catch (HeadlessException | AWTError | LinkageError e) {
            throw new TerminalException(
                    TerminalException.Reason.WINDOW, e.getClass().getSimpleName(), e);
        }
    }
}
