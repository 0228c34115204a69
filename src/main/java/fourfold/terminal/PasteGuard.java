// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Keeps out keys that no hand can have pressed: more than {@value #MOST} within half a millisecond are a paste or a
 * flood, and all of it is dropped until 50 ms have been quiet.
 *
 * <p>Each key is held back for so long, which nobody sees; its stamp stays what it was. A terminal hands a paste over in
 * one piece, and no keyboard reports four keys in that time (our own choice; a keyboard on USB is asked once in a
 * millisecond at most). A held-down key repeats about thirty
 * times a second and passes.
 */
final class PasteGuard {
    static final int MOST = 3;
    static final long WINDOW_NANOS = 500_000;
    static final long QUIET_NANOS = Duration.ofMillis(50).toNanos();

    private final Deque<KeyPress> held = new ArrayDeque<>();
    private final Deque<KeyPress> passed = new ArrayDeque<>();
    private boolean pasting;
    private long last;

    /** Takes a key that has arrived; stamps never go back. */
    void arrive(KeyPress press) {
        boolean goesOn = pasting && press.nanos() - last < QUIET_NANOS;
        last = press.nanos();
        if (goesOn) {
            return;
        }
        pasting = false;
        settle(press.nanos());
        held.add(press);
        if (held.size() > MOST) {
            held.clear();
            pasting = true;
        }
    }

    /** Says what time it is: keys older than the window are past suspicion. */
    void settle(long nanos) {
        while (!held.isEmpty() && nanos - held.element().nanos() > WINDOW_NANOS) {
            passed.add(held.remove());
        }
    }

    /** Says that nothing follows: all that is held passes. */
    void settle() {
        passed.addAll(held);
        held.clear();
    }

    /** The next key that passed. */
    Optional<KeyPress> next() {
        return Optional.ofNullable(passed.poll());
    }

    /** How long after {@code nanos} the next held key will pass; empty if none is held. */
    Optional<Duration> due(long nanos) {
        return Optional.ofNullable(held.peek())
                .map(press -> Duration.ofNanos(Math.max(0, press.nanos() + WINDOW_NANOS + 1 - nanos)));
    }
}
