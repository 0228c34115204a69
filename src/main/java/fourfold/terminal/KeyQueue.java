// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** Keys on their way from the thread that reads them to the one that uses them. */
final class KeyQueue {
    /** What a queue does while it is empty. */
    enum Waiting {
        /** Waits, and holds each key back until the paste guard is sure. */
        LIVE,
        /** Waits, but takes an empty queue as proof that nothing follows. */
        PRESSED,
        /** Never waits: the clock is set by hand. */
        HAND_CLOCK
    }

    /** Keys that came in one piece stay in one piece, or a paste could be taken for its first keys alone. */
    private final BlockingQueue<List<KeyPress>> arrivals = new LinkedBlockingQueue<>();

    private final PasteGuard guard = new PasteGuard();
    private final LongSupplier clock;
    private final Waiting waiting;
    private Optional<Long> tooOld = Optional.empty();
    private boolean woken;
    private volatile boolean ended;

    KeyQueue(LongSupplier clock, Waiting waiting) {
        this.clock = clock;
        this.waiting = waiting;
    }

    /** Adds keys that came in one piece, with one stamp; from any thread. The key EOF ends the queue. */
    void add(List<KeyPress> piece) {
        for (KeyPress press : piece) {
            if (isEnd(press)) {
                ended = true;
            }
        }
        arrivals.add(piece);
    }

    /** Ends the waiting for a key, now or the next time; from any thread. */
    void wake() {
        arrivals.add(List.of());
    }

    private static boolean isEnd(KeyPress press) {
        return press.key().getKeyType() == KeyType.EOF;
    }

    /** Whether no more keys will ever come. */
    boolean ended() {
        return ended;
    }

    /** From now on drops every key stamped before {@code nanos}, but for those with Ctrl. */
    void dropBefore(long nanos) {
        tooOld = Optional.of(nanos);
    }

    /** The next key, waiting for it at most {@code wait}; empty at once when the queue has ended or was woken. */
    Optional<KeyPress> next(Duration wait) {
        long until = clock.getAsLong() + wait.toNanos();
        while (true) {
            takeArrivals();
            Optional<KeyPress> press = firstYoungEnough();
            if (press.isPresent() || ended || waiting == Waiting.HAND_CLOCK) {
                return press;
            }
            long now = clock.getAsLong();
            if (woken || until - now <= 0) {
                woken = false;
                return Optional.empty();
            }
            long pause =
                    Math.min(until - now, guard.due(now).map(Duration::toNanos).orElse(Long.MAX_VALUE));
            if (!pause(pause)) {
                return Optional.empty();
            }
        }
    }

    private void takeArrivals() {
        for (List<KeyPress> piece = arrivals.poll(); piece != null; piece = arrivals.poll()) {
            pass(piece);
        }
        if (waiting == Waiting.LIVE) {
            guard.settle(clock.getAsLong());
        } else {
            guard.settle();
        }
    }

    private void pass(List<KeyPress> piece) {
        woken |= piece.isEmpty();
        List<KeyPress> whole = pasted(piece);
        if (!whole.isEmpty()) {
            guard.settle(whole.get(0).nanos());
            whole.forEach(guard::arrive);
            return;
        }
        for (KeyPress press : piece) {
            if (!isEnd(press)) {
                guard.arrive(press);
            }
        }
    }

    /** What is too much for a hand to have typed in one piece, as one key if it is one line of text; else nothing. */
    private static List<KeyPress> pasted(List<KeyPress> piece) {
        if (piece.size() <= PasteGuard.MOST) {
            return List.of();
        }
        StringBuilder text = new StringBuilder();
        for (KeyPress press : piece) {
            KeyStroke key = press.key();
            boolean sign = key.getKeyType() == KeyType.Character && !key.isCtrlDown() && !key.isAltDown();
            if (!sign && key.getKeyType() != KeyType.Enter) {
                return List.of();
            }
            text.append(sign ? key.getCharacter() : '\n');
        }
        Pasted pasted = new Pasted(text.toString());
        return pasted.isLine() ? List.of(new KeyPress(pasted, piece.get(0).nanos())) : List.of();
    }

    private Optional<KeyPress> firstYoungEnough() {
        Optional<KeyPress> press = guard.next();
        while (press.isPresent() && isTooOld(press.get())) {
            press = guard.next();
        }
        return press;
    }

    private boolean isTooOld(KeyPress press) {
        // Leaving and stopping are meant whenever they are pressed.
        return !press.key().isCtrlDown() && tooOld.isPresent() && press.nanos() - tooOld.get() < 0;
    }

    /** Waits for an arrival; false if the thread was asked to stop. */
    private boolean pause(long nanos) {
        try {
            List<KeyPress> piece = arrivals.poll(nanos, TimeUnit.NANOSECONDS);
            if (piece != null) {
                pass(piece);
            }
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
