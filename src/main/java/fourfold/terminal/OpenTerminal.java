// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.terminal.Terminal;
import fourfold.log.Surface;
import java.io.Console;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Where the program can draw: the terminal it was started in, or else a window on the desktop.
 *
 * @param terminal opened, and to be closed by whoever asked for it
 * @param abilities what it can show
 * @param surface terminal or window, for the log
 */
record OpenTerminal(Terminal terminal, Abilities abilities, Surface surface) {
    /**
     * Opens the terminal the program was started in, or a window if there is none.
     *
     * @param environment the variables that say what the terminal can show
     * @param asks whether the terminal is asked for its ground
     * @param window the size of the window, asked for only if there is to be one
     * @throws TerminalException if there is neither, in one line that says what to do
     */
    static OpenTerminal open(Map<String, String> environment, boolean asks, Supplier<WindowSize> window)
            throws TerminalException {
        boolean windows =
                System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
        if (!windows && isInteractive()) {
            if (environment.getOrDefault("TERM", "").equalsIgnoreCase("dumb")) {
                throw new TerminalException(TerminalException.Reason.DUMB);
            }
            return ofProcess(environment, asks);
        }
        if (DesktopWindow.isPossible()) {
            return new OpenTerminal(
                    DesktopWindow.open(window.get()), new Abilities(true, ColourDepth.FULL), Surface.WINDOW);
        }
        throw new TerminalException(TerminalException.Reason.NONE);
    }

    private static OpenTerminal ofProcess(Map<String, String> environment, boolean asks) throws TerminalException {
        String encoding =
                environment.getOrDefault(Abilities.CHARSET, System.getProperty("native.encoding", "US-ASCII"));
        Abilities abilities = Abilities.of(environment, encoding);
        Charset charset = abilities.unicode() ? StandardCharsets.UTF_8 : Charset.forName(encoding);
        try {
            return new OpenTerminal(
                    RawTerminal.open(charset, asks && Ground.mayBeAsked(environment)), abilities, Surface.TERMINAL);
        } catch (IOException e) {
            throw new TerminalException(TerminalException.Reason.UNUSABLE, String.valueOf(e.getMessage()), e);
        }
    }

    /** Whether both ends of the program are a terminal; since Java 22 a console alone does not prove it. */
    @SuppressWarnings("SystemConsoleNull") // The newer Java's answer is asked for below; on Java 17 null is the answer.
    static boolean isInteractive() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException e) {
            return true;
        }
    }

    /** Closes the terminal after something else has failed. */
    void giveBack() {
        try {
            terminal.close();
        } catch (IOException e) {
            // The reason why it could not be drawn on is already being reported.
        }
    }
}
