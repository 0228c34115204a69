// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.graphics.TextGraphics;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.screen.Screen;
import com.googlecode.lanterna.terminal.Terminal;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.log.Surface;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * A terminal or window in use: pictures are shown on it and keys come from it. One thread uses it; another, the
 * {@link KeyReader}'s, only reads and stamps keys. It has the one clock by which keys and pictures are stamped.
 */
public final class TerminalSession implements AutoCloseable {
    private final Terminal terminal;
    private final Optional<RawTerminal> raw;
    private final KeyQueue keys;
    private final FittedScreen screen;
    private final Abilities abilities;
    private final Surface surface;
    private final LongSupplier clock;
    private Theme theme = Theme.PLAIN;
    private boolean redraw;
    private boolean closed;

    TerminalSession(
            Terminal terminal, Abilities abilities, Surface surface, LongSupplier clock, KeyQueue.Waiting waiting)
            throws IOException {
        this.terminal = terminal;
        this.raw = terminal instanceof RawTerminal own ? Optional.of(own) : Optional.empty();
        this.abilities = abilities;
        this.surface = surface;
        this.clock = clock;
        this.keys = new KeyQueue(clock, waiting);
        if (raw.isPresent()) {
            raw.get().noticeSize();
        }
        this.screen = new FittedScreen(terminal, keys, abilities);
        screen.setCursorPosition(null);
        screen.startScreen();
    }

    /**
     * Opens the terminal the program was started in, or a window on the desktop if there is none.
     *
     * @param environment the variables that say what the terminal can show
     * @throws TerminalException if there is neither
     */
    public static TerminalSession open(Map<String, String> environment) throws TerminalException {
        return open(environment, Optional.empty(), () -> WindowSize.USUAL);
    }

    /**
     * The same with a size for the window, which is asked for only if there is to be one.
     *
     * @param chosen the theme that was set; empty for one that fits the terminal's ground
     * @throws TerminalException if there is neither
     */
    public static TerminalSession open(
            Map<String, String> environment, Optional<Theme> chosen, Supplier<WindowSize> window)
            throws TerminalException {
        OpenTerminal open = OpenTerminal.open(environment, chosen.isEmpty(), window);
        try {
            TerminalSession session = new TerminalSession(
                    open.terminal(), open.abilities(), open.surface(), System::nanoTime, KeyQueue.Waiting.LIVE);
            return session.read(environment, chosen);
        } catch (IOException e) {
            open.giveBack();
            throw new TerminalException(TerminalException.Reason.UNDRAWABLE, String.valueOf(e.getMessage()), e);
        }
    }

    /** Begins to read keys, and dresses in the theme that was set, or else in one that fits the ground. */
    TerminalSession read(Map<String, String> environment, Optional<Theme> chosen) {
        KeyReader.start(terminal, keys, clock);
        return with(chosen.or(() -> ground(environment)).orElse(Theme.PLAIN));
    }

    /** What fits the ground: in a window we paint it ourselves. */
    private Optional<Theme> ground(Map<String, String> environment) {
        return surface == Surface.WINDOW
                ? Optional.of(Theme.LIGHT)
                : raw.flatMap(RawTerminal::ground).or(() -> Ground.told(environment));
    }

    /** The colours that fit. */
    public Theme theme() {
        return theme;
    }

    /** With these colours, as far as the terminal can show them. */
    TerminalSession with(Theme wanted) {
        theme = abilities.colours().hasPalette() ? wanted : Theme.PLAIN;
        return this;
    }

    /** A session on a terminal in memory of this size, without a user: keys come only by {@link #press}. */
    public static TerminalSession inMemory(int columns, int rows) {
        return on(new DefaultVirtualTerminal(new TerminalSize(columns, rows)), true, true);
    }

    /** A session on a terminal in memory, for tests and tours; keys come only by {@link #press}. */
    public static TerminalSession on(DefaultVirtualTerminal terminal, boolean unicode, boolean colour) {
        return inMemory(terminal, unicode, colour, System::nanoTime, KeyQueue.Waiting.PRESSED);
    }

    /** The same with a clock set by hand: {@link #next} then never waits. */
    public static TerminalSession on(
            DefaultVirtualTerminal terminal, boolean unicode, boolean colour, LongSupplier nanos) {
        return inMemory(terminal, unicode, colour, nanos, KeyQueue.Waiting.HAND_CLOCK);
    }

    private static TerminalSession inMemory(
            Terminal terminal, boolean unicode, boolean colour, LongSupplier clock, KeyQueue.Waiting waiting) {
        Abilities abilities = new Abilities(unicode, colour ? ColourDepth.FULL : ColourDepth.NONE);
        try {
            return new TerminalSession(terminal, abilities, Surface.TERMINAL, clock, waiting);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Nanoseconds on the clock that stamps keys and pictures; it has no relation to the time of day. */
    public long now() {
        return clock.getAsLong();
    }

    /** Adds a key as if it had been pressed at {@code nanos}; the key EOF ends the session. Any thread may call it. */
    public void press(KeyStroke key, long nanos) {
        keys.add(List.of(new KeyPress(key, nanos)));
    }

    /** Adds a sign as if it had been typed now; a line's end is the key Enter. */
    public void type(char sign) {
        press(sign == '\n' ? new KeyStroke(KeyType.Enter) : new KeyStroke(sign, false, false), now());
    }

    /** The next key, or empty if none comes within {@code wait} or none can come any more. */
    public Optional<KeyPress> next(Duration wait) {
        return keys.next(wait);
    }

    /** Lets {@link #next} return at once though no key came, now or the next time it would wait. Any thread may call it. */
    public void wake() {
        keys.wake();
    }

    /** Drops every key stamped before {@code nanos}, those still on their way as well. */
    public void dropKeysBefore(long nanos) {
        keys.dropBefore(nanos);
    }

    /** Whether the user is gone: end of input, a closed window, or nobody left who receives the pictures. */
    public boolean ended() {
        return keys.ended() || raw.filter(RawTerminal::broken).isPresent();
    }

    /** Whether everything must be drawn anew: after a change of size, or when the program was stopped and continued. */
    public boolean resized() {
        boolean again = redraw;
        redraw = false;
        try {
            if (raw.isPresent()) {
                again |= raw.get().cameBack();
                raw.get().noticeSize();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return screen.doResizeIfNecessary() != null || again;
    }

    /** The library's screen; its keys come from this session. */
    public Screen screen() {
        return screen;
    }

    /** Something to draw with. */
    public TextGraphics graphics() {
        return screen.newTextGraphics();
    }

    /** Columns and rows. */
    public TerminalSize size() {
        return screen.getTerminalSize();
    }

    /** How many columns there are. */
    public int columns() {
        return size().getColumns();
    }

    /** How many rows there are. */
    public int rows() {
        return size().getRows();
    }

    /**
     * Sends what was drawn.
     *
     * @param complete whether to send every cell, as after {@link #resized()}, or only those that changed
     * @return the moment after the picture left the program, as in {@link #now()}
     */
    public long paint(boolean complete) {
        try {
            screen.refresh(complete ? Screen.RefreshType.COMPLETE : Screen.RefreshType.DELTA);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return now();
    }

    /** How large the window is; empty if this is none, or if it is of no size that a window opens in. */
    public Optional<WindowSize> window() {
        return terminal instanceof WindowTerminal own
                ? WindowSize.remembered(columns() + "x" + rows() + " " + own.letters())
                : Optional.empty();
    }

    /** Whether more than ASCII can be shown. Drawing does not depend on it: cells are fitted on their way out. */
    public boolean unicode() {
        return abilities.unicode();
    }

    /** Whether any colour can be shown. */
    public boolean colour() {
        return abilities.colours() != ColourDepth.NONE;
    }

    /** Where the answers are typed. */
    public Surface surface() {
        return surface;
    }

    /** Stops the program until the shell continues it; then {@link #resized()} is true. Does nothing in a window. */
    public void suspend() {
        try {
            if (raw.isPresent()) {
                redraw = true;
                if (!raw.get().suspend()) {
                    press(new KeyStroke(KeyType.EOF), now());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Leaves the terminal as it was found. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            screen.stopScreen(false);
            terminal.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (IllegalStateException e) {
            // The program is being ended, and the library's hook is already doing the same.
        }
    }

    /** Whether somebody sits at a terminal, so that signs of work that lasts have a reader. */
    public static boolean isInteractive() {
        return OpenTerminal.isInteractive();
    }
}
