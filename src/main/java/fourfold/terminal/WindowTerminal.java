// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * The library's terminal in memory, with a window's keys in and whole pictures out. Reading waits outside the library's
 * lock, so that drawing goes on meanwhile.
 */
final class WindowTerminal extends DefaultVirtualTerminal {
    private final BlockingQueue<KeyStroke> keys = new LinkedBlockingQueue<>();
    private volatile TextCharacter[][] shown;
    private volatile int letters = WindowSize.USUAL.points();
    private volatile Runnable onShown = () -> {};
    private volatile Runnable onClose = () -> {};

    WindowTerminal(int columns, int rows) {
        super(new TerminalSize(columns, rows));
        shown = new TextCharacter[][] {{TextCharacter.DEFAULT_CHARACTER}};
    }

    /** What is done when there is a new picture, and when the program closes the window. */
    void tell(Runnable painted, Runnable closed) {
        onShown = painted;
        onClose = closed;
    }

    /** How large the letters are now, in points. */
    int letters() {
        return letters;
    }

    void letters(int points) {
        letters = points;
    }

    /** Adds a key; from any thread. */
    void press(KeyStroke key) {
        keys.add(key);
    }

    /** The last whole picture. */
    TextCharacter[][] shown() {
        return shown;
    }

    @Override
    @SuppressWarnings("UnsynchronizedOverridesSynchronized") // Waiting in the lock would stop the drawing.
    public KeyStroke readInput() {
        try {
            return keys.take();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new KeyStroke(KeyType.EOF);
        }
    }

    @Override
    @SuppressWarnings("UnsynchronizedOverridesSynchronized")
    public @Nullable KeyStroke pollInput() {
        return keys.poll();
    }

    @Override
    public synchronized void flush() {
        TerminalSize size = getTerminalSize();
        TextCharacter[][] picture = new TextCharacter[size.getRows()][size.getColumns()];
        for (int row = 0; row < size.getRows(); row++) {
            for (int column = 0; column < size.getColumns(); column++) {
                picture[row][column] = getCharacter(column, row);
            }
        }
        getAndResetDirtyCells();
        isWholeBufferDirtyThenReset();
        shown = picture;
        super.flush();
        onShown.run();
    }

    @Override
    public void close() {
        super.close();
        onClose.run();
    }
}
