// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * The keys of the user's own terminal: it waits for characters, gives the decoder what has come and tells it of silence,
 * and keeps the terminal's replies apart. One thread reads; the questions for replies may come from another.
 */
final class Keyboard {
    /** A reply that comes later than this after the question comes no more. */
    private static final long LATEST_REPLY_NANOS = 2_000_000_000L;

    private final Reader characters;
    private final BooleanSupplier suspended;
    private final KeyDecoder decoder = new KeyDecoder();
    private final Ground ground = new Ground();
    /** When the terminal was asked for its ground. */
    private volatile long asked;

    private volatile boolean awaiting;
    /** As much as the system and the decoding of characters hand over at once, so that no piece is cut in two. */
    private final char[] chunk = new char[8192];

    /**
     * A keyboard that nobody has touched.
     *
     * @param characters what the terminal sends
     * @param suspended whether the program is stopped, when the terminal can't be read and that means nothing
     */
    Keyboard(Reader characters, BooleanSupplier suspended) {
        this.characters = characters;
        this.suspended = suspended;
    }

    /** Loads the classes that reading needs. */
    static void load() {
        new KeyDecoder().next();
    }

    /** The terminal is about to be asked for its ground, on the scale of {@link System#nanoTime()}. */
    void expectReplies(long nanos) {
        asked = nanos;
        awaiting = true;
        decoder.awaiting(true);
    }

    /** The theme that fits the terminal's ground, if it was asked for and answers in time. */
    Optional<Theme> ground() {
        return awaiting ? ground.theme(asked + Ground.PATIENCE_NANOS - System.nanoTime()) : Optional.empty();
    }

    /** Waits for a key; {@link KeyType#EOF} when no more can come. */
    KeyStroke key() throws IOException {
        while (true) {
            Optional<KeyStroke> key = decoder.next();
            if (key.isPresent()) {
                return key.get();
            }
            hearReplies();
            long patience = decoder.patience().toNanos();
            if (patience > 0 && !moreWithin(patience)) {
                decoder.silence();
            } else if (!read()) {
                return new KeyStroke(KeyType.EOF);
            }
        }
    }

    /** Waits for keys and gives all that came in one piece: one as a rule, many in a paste. */
    List<KeyStroke> piece() throws IOException {
        List<KeyStroke> piece = new ArrayList<>();
        for (Optional<KeyStroke> key = Optional.of(key()); key.isPresent(); key = decoder.next()) {
            piece.add(key.get());
        }
        return piece;
    }

    private void hearReplies() {
        if (awaiting) {
            for (Optional<String> reply = decoder.reply(); reply.isPresent(); reply = decoder.reply()) {
                ground.take(reply.get());
            }
            if (ground.isAnswered() || System.nanoTime() - asked > LATEST_REPLY_NANOS) {
                decoder.awaiting(false);
            }
        }
    }

    private boolean read() throws IOException {
        int length;
        try {
            length = characters.read(chunk);
        } catch (IOException e) {
            if (!suspended.getAsBoolean()) {
                throw e;
            }
            // Continued in the background: the terminal is not ours to read until the stop is over.
            pause(50);
            return true;
        }
        hearReplies();
        for (int i = 0; i < length; i++) {
            decoder.take(chunk[i]);
        }
        return length >= 0;
    }

    private boolean moreWithin(long nanos) throws IOException {
        long waited = 0;
        while (!characters.ready()) {
            if (waited >= nanos) {
                return false;
            }
            pause(1);
            waited += 1_000_000;
        }
        return true;
    }

    private static void pause(long millis) throws IOException {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while reading keys", e);
        }
    }
}
