// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.store.GateRow;
import fourfold.store.Store;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * The gate before the grown-ups' pages. Wrong tries are counted in the file, so that starting anew does not help; each
 * from the third on makes one wait, twice as long as the one before, up to a quarter of an hour (our own choice). A clock
 * that was set back begins the wait again, and so does a start of the program, or setting the clock ahead would end it. What
 * can be no PIN, such as nothing at all, is no try.
 */
public final class Gate {
    private static final int FREE_TRIES = 2;
    private static final Duration FIRST_WAIT = Duration.ofSeconds(30);
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(15);

    private final Store store;
    private final int rounds;
    private final Instant started;

    /** In a program that was started then, by the clock that goes on from there whatever the computer's is set to. */
    Gate(Store store, Instant started) {
        this(store, Pin.ROUNDS, started);
    }

    /** With another number of rounds, for tests. */
    Gate(Store store, int rounds) {
        this(store, rounds, Instant.MIN);
    }

    /** With both. */
    Gate(Store store, int rounds, Instant started) {
        this.store = store;
        this.rounds = rounds;
        this.started = started;
    }

    /** Whether a PIN is set. */
    public boolean isSet() {
        return gate().isPresent();
    }

    /** How long one has to wait before the next try. */
    public Duration wait(Instant now) {
        Optional<GateRow> gate = gate();
        if (gate.flatMap(GateRow::wrongAt).filter(now::isBefore).isPresent()) {
            gate = store.changeGate(
                    g -> Optional.of(new GateRow(g.hash(), g.setAt(), g.wrongTries(), Optional.of(now))));
        }
        return gate.map(g -> wait(g, now)).orElse(Duration.ZERO);
    }

    private Duration wait(GateRow gate, Instant now) {
        if (gate.wrongAt().isEmpty()) {
            return Duration.ZERO;
        }
        Instant wrong = gate.wrongAt().get();
        Instant from = wrong.isBefore(started) && gate.wrongTries() > FREE_TRIES ? started : wrong;
        Duration left = Duration.between(now, from.plus(waitAfter(gate.wrongTries())));
        return left.isNegative() ? Duration.ZERO : left;
    }

    /** Whether this can be a PIN at all. */
    public static boolean isPossible(String pin) {
        return Pin.isPossible(pin);
    }

    /** How long the gate stays shut, by the number of wrong tries. */
    static Duration waitAfter(int wrongTries) {
        if (wrongTries <= FREE_TRIES) {
            return Duration.ZERO;
        }
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(10, wrongTries - FREE_TRIES - 1));
        return wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    }

    /** Whether this PIN opens it now; a wrong one is counted. */
    public boolean opens(String pin, Instant now) {
        Optional<GateRow> gate = gate();
        if (gate.isEmpty()) {
            return true;
        }
        if (!wait(now).isZero() || !Pin.isPossible(pin)) {
            return false;
        }
        // Counted first, so that ending the program while it thinks saves no try; and looked at and counted in one, so
        // that
        // two programs have no more tries than one.
        Optional<GateRow> counted = store.changeGate(g -> wait(g, now).isZero()
                ? Optional.of(new GateRow(g.hash(), g.setAt(), g.wrongTries() + 1, Optional.of(now)))
                : Optional.empty());
        boolean fits = counted.filter(g -> Pin.fits(pin, g.hash())).isPresent();
        if (fits) {
            store.changeGate(g -> Optional.of(new GateRow(g.hash(), g.setAt(), 0, Optional.empty())));
        }
        return fits;
    }

    /** Sets a PIN of 4 to 8 digits. */
    public void set(String pin, Instant now) {
        if (!Pin.isPossible(pin)) {
            throw new IllegalArgumentException("a PIN has 4 to 8 digits");
        }
        keep(new GateRow(Pin.kept(pin, new SecureRandom(), rounds), now, 0, Optional.empty()));
    }

    /** Takes the PIN away. */
    public void remove() {
        store.removeGate();
    }

    private Optional<GateRow> gate() {
        return store.gate();
    }

    private void keep(GateRow row) {
        store.keepGate(row);
    }
}
