// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.ansi.UnixTerminal;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The user's own terminal on standard input and output.
 *
 * <p>It replaces what the library does badly there: keys come by the {@link Keyboard}, a frame leaves in one write,
 * the size is asked of the system and not of the terminal, and the program can be stopped and continued.
 *
 * <p>The library's constructor already calls the methods for terminal modes, before a field of this class is set; they
 * therefore do nothing, and {@link #open} changes the modes once the object is whole. The library's shutdown hook calls
 * {@link #exitPrivateMode()} and {@link #restoreTerminalSettings()}, which is all that a signal needs.
 */
final class RawTerminal extends UnixTerminal {
    private static final String ALTERNATE_SCREEN = "\u001b[?1049h";
    /**
     * Plain keypad and cursor keys, no wrapping at the right edge, pastes marked as such, and letters left in the order in
     * which they are sent (ECMA-48, mode BDSM reset), because names that run from right to left are turned already.
     */
    private static final String SETUP = "\u001b>\u001b[?1l\u001b[?7l\u001b[?2004h\u001b[8l";

    private static final String FAREWELL = "\u001b[8h\u001b[?2004l\u001b[?7h\u001b[0m\u001b[?25h\u001b[?1049l";

    private final FrameStream frames;
    private final TerminalModes modes;
    private final Keyboard keyboard;
    private volatile TerminalSize size = new TerminalSize(80, 24);
    private volatile boolean sizeStale;
    private volatile boolean continued;
    private volatile boolean suspended;
    private volatile boolean leaving;
    private volatile boolean lost;

    private RawTerminal(InputStream in, FrameStream frames, TerminalModes modes, Charset charset) throws IOException {
        super(InputStream.nullInputStream(), frames, charset, CtrlCBehaviour.TRAP);
        this.frames = frames;
        this.modes = modes;
        this.size = modes.sizeFound().orElse(size);
        this.keyboard = new Keyboard(new InputStreamReader(in, charset), () -> suspended);
    }

    /** Loads this class and those it needs; the terminal is left alone. */
    static void load() {
        Keyboard.load();
    }

    /** One that reads nothing and writes nowhere. */
    static RawTerminal nowhere() throws IOException {
        return open(
                TerminalModes.none(),
                InputStream.nullInputStream(),
                OutputStream.nullOutputStream(),
                StandardCharsets.UTF_8,
                true);
    }

    /** Takes the terminal over: keys arrive at once and unseen. */
    static RawTerminal open(Charset charset, boolean asksForGround) throws IOException {
        return open(
                TerminalModes.asFound(),
                new FileInputStream(FileDescriptor.in),
                new FileOutputStream(FileDescriptor.out),
                charset,
                asksForGround);
    }

    private static RawTerminal open(
            TerminalModes modes, InputStream in, OutputStream out, Charset charset, boolean asksForGround)
            throws IOException {
        RawTerminal terminal = new RawTerminal(in, new FrameStream(out), modes, charset);
        Signals.on("WINCH", () -> terminal.sizeStale = true);
        Signals.on("CONT", () -> terminal.continued = true);
        // In the background a read then fails instead of stopping the program again, so that it can be ended there.
        Signals.ignore("TTIN");
        modes.makeRaw();
        if (asksForGround) {
            terminal.keyboard.expectReplies(System.nanoTime());
            terminal.frames.write(Ground.QUESTION);
            terminal.frames.flush();
        }
        return terminal;
    }

    /** The theme that fits the terminal's ground, if it was asked for and answers in time. */
    Optional<Theme> ground() {
        return keyboard.ground();
    }

    // ---- keys

    @Override
    public KeyStroke readInput() throws IOException {
        return keyboard.key();
    }

    /** Waits for keys and gives all that came in one piece: one as a rule, many in a paste. */
    List<KeyStroke> readPiece() throws IOException {
        return keyboard.piece();
    }

    /** The library's own way to read; keys come by {@link #readPiece()} alone. */
    @Override
    public KeyStroke pollInput() {
        return new KeyStroke(KeyType.EOF);
    }

    // ---- pictures

    /** One character as bytes; the library's own table adds a NUL after each character of two bytes. */
    @Override
    protected byte[] translateCharacter(char c) {
        return String.valueOf(c).getBytes(StandardCharsets.UTF_8);
    }

    /** Whether nobody receives the pictures any more. */
    boolean broken() {
        return lost || frames.broken();
    }

    @Override
    protected TerminalSize findTerminalSize() {
        return size;
    }

    /** Asks for the size again if the window has changed. */
    void noticeSize() throws IOException {
        if (sizeStale) {
            sizeStale = false;
            size = TerminalModes.size().orElse(size);
            getTerminalSize();
        }
    }

    // ---- coming and going

    @Override
    public void enterPrivateMode() throws IOException {
        super.enterPrivateMode();
        frames.write(SETUP);
        frames.flush();
    }

    @Override
    public void exitPrivateMode() throws IOException {
        leaving = true;
        frames.shut(FAREWELL);
        // What the library sends now is swallowed; only its memory of the mode changes.
        super.exitPrivateMode();
    }

    @Override
    protected void restoreTerminalSettings() throws IOException {
        if (modes != null) {
            leaving = true;
            // In the background, setting the modes would stop the program instead of letting it end.
            Signals.ignore("TTOU");
            modes.leave();
        }
    }

    /**
     * Stops the program as the terminal itself does on Ctrl-Z, and comes back when it is continued. Where no shell can
     * continue it, the system does not stop it at all.
     *
     * @return false if the program was not continued but is being ended
     */
    boolean suspend() throws IOException {
        suspended = true;
        frames.shut(FAREWELL);
        modes.restore();
        if (!stopGroup()) {
            leaving = true;
            return false;
        }
        takeBack();
        suspended = false;
        return !leaving && !lost;
    }

    /** Stops the whole group, so that a script which started the program stops as well; false if it was ended meanwhile. */
    private static boolean stopGroup() {
        try {
            TerminalModes.run("kill -TSTP 0");
            return true;
        } catch (IOException e) {
            // The signal that ends the program ended the shell that stopped it.
            return false;
        }
    }

    /** Whether the program was stopped from outside and continued since the last call; the terminal is then retaken. */
    boolean cameBack() {
        if (!continued) {
            return false;
        }
        takeBack();
        return true;
    }

    private void takeBack() {
        if (leaving || lost) {
            return;
        }
        try {
            modes.makeRaw();
        } catch (IOException e) {
            // The signal that ends the program ended this as well, or the terminal has gone.
            lost = true;
            return;
        }
        continued = false;
        sizeStale = true;
        if (!leaving) {
            frames.reopen();
            frames.write(ALTERNATE_SCREEN + SETUP);
            frames.flush();
        }
    }

    // ---- what the library's constructor calls too early

    @Override
    protected void saveTerminalSettings() {
        // Done before construction.
    }

    @Override
    protected void canonicalMode(boolean enabled) {
        // Part of TerminalModes.
    }

    @Override
    protected void keyEchoEnabled(boolean enabled) {
        // Part of TerminalModes.
    }

    @Override
    protected void keyStrokeSignalsEnabled(boolean enabled) {
        // Part of TerminalModes.
    }

    @Override
    protected void registerTerminalResizeListener(Runnable onResize) {
        // Asking the size on the signal's thread would race with the drawing; open() sets a mark instead.
    }
}
