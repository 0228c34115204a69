// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;

/** Reads a terminal's keys on a thread of its own, stamps them and puts them into the queue, until the input ends. */
final class KeyReader {
    private final Terminal terminal;
    private final KeyQueue keys;
    private final LongSupplier clock;

    private KeyReader(Terminal terminal, KeyQueue keys, LongSupplier clock) {
        this.terminal = terminal;
        this.keys = keys;
        this.clock = clock;
    }

    /**
     * Begins to read, on a thread that does not keep the program alive.
     *
     * @param clock nanoseconds, by which keys are stamped
     */
    static void start(Terminal terminal, KeyQueue keys, LongSupplier clock) {
        Thread thread = new Thread(new KeyReader(terminal, keys, clock)::readAll, "keys");
        thread.setDaemon(true);
        thread.start();
    }

    private void readAll() {
        List<KeyPress> piece;
        do {
            piece = readPiece();
            keys.add(piece);
        } while (piece.get(piece.size() - 1).key().getKeyType() != KeyType.EOF);
    }

    /** Keys that came in one piece, all stamped with the moment at which they were read. */
    private List<KeyPress> readPiece() {
        try {
            List<KeyStroke> strokes =
                    terminal instanceof RawTerminal raw ? raw.readPiece() : List.of(terminal.readInput());
            long read = clock.getAsLong();
            List<KeyPress> piece = new ArrayList<>(strokes.size());
            for (KeyStroke stroke : strokes) {
                piece.add(new KeyPress(plainControl(stroke), read));
            }
            return piece;
        } catch (IOException e) {
            // The terminal has gone away.
            return List.of(new KeyPress(new KeyStroke(KeyType.EOF), clock.getAsLong()));
        }
    }

    /** The window sends Ctrl-Z as a control character; everywhere else it is a letter with Ctrl. */
    private static KeyStroke plainControl(KeyStroke key) {
        Character c = key.getCharacter();
        return key.isCtrlDown() && c != null && c < ' '
                ? new KeyStroke(Character.toLowerCase((char) (c + 0x40)), true, key.isAltDown())
                : key;
    }
}
