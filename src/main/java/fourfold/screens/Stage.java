package fourfold.screens;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.screen.Screen;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.facts.Surface;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;

/** P. */
public final class Stage implements AutoCloseable {
    private final TerminalScreen screen;
    private final boolean unicode;
    private final Queue<KeyPress> keys = new ArrayDeque<>();

    private Stage(TerminalScreen screen, boolean unicode) {
        this.screen = screen;
        this.unicode = unicode;
    }

    /** P. */
    public static Stage open(Map<String, String> environment) {
        if (environment.isEmpty()) {
            throw new StageException("needs a terminal");
        }
        return on(new DefaultVirtualTerminal(), true, true);
    }

    /** P. */
    public static Stage on(DefaultVirtualTerminal terminal, boolean unicode, boolean colour) {
        try {
            TerminalScreen screen = new TerminalScreen(terminal);
            screen.startScreen();
            return new Stage(screen, unicode);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** P. */
    public void press(KeyStroke key, long nanos) {
        keys.add(new KeyPress(key, nanos));
    }

    /** P. */
    public Screen screen() {
        return screen;
    }

    /** P. */
    public TerminalSize size() {
        return screen.getTerminalSize();
    }

    /** P. */
    public Optional<KeyPress> next(Duration wait) {
        return Optional.ofNullable(keys.poll());
    }

    /** P. */
    public boolean ended() {
        return false;
    }

    /** P. */
    public boolean resized() {
        return screen.doResizeIfNecessary() != null;
    }

    /** P. */
    public void dropKeysBefore(long nanos) {
        keys.removeIf(k -> k.nanos() < nanos);
    }

    /** P. */
    public long paint(boolean complete) {
        try {
            screen.refresh(complete ? Screen.RefreshType.COMPLETE : Screen.RefreshType.DELTA);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return System.nanoTime();
    }

    /** P. */
    public boolean unicode() {
        return unicode;
    }

    /** P. */
    public Surface surface() {
        return Surface.TERMINAL;
    }

    /** P. */
    public void suspend() {}

    @Override
    public void close() {}
}
