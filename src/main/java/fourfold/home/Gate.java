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
 * that was set back begins the wait again. What can be no PIN, such as nothing at all, is no try.
 */
public final class Gate {
    private static final int FREE_TRIES = 2;
    private static final Duration FIRST_WAIT = Duration.ofSeconds(30);
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(15);

    private final Store store;
    private final int rounds;

    Gate(Store store) {
        this(store, Pin.ROUNDS);
    }

    /** With another number of rounds, for tests. */
    Gate(Store store, int rounds) {
        this.store = store;
        this.rounds = rounds;
    }

    /** Whether a PIN is set. */
    public boolean isSet() {
        return gate().isPresent();
    }

    /** How long one has to wait before the next try. */
    public Duration wait(Instant now) {
        Optional<GateRow> gate = gate();
        if (gate.isEmpty() || gate.get().wrongAt().isEmpty()) {
            return Duration.ZERO;
        }
        Instant wrong = gate.get().wrongAt().get();
        if (now.isBefore(wrong)) {
            keep(new GateRow(gate.get().hash(), gate.get().setAt(), gate.get().wrongTries(), Optional.of(now)));
            wrong = now;
        }
        Duration left = Duration.between(now, wrong.plus(waitAfter(gate.get().wrongTries())));
        return left.isNegative() ? Duration.ZERO : left;
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
        if (!wait(now).isZero()) {
            return false;
        }
        if (!Pin.isPossible(pin)) {
            return false;
        }
        // Counted first, so that ending the program while it thinks saves no try.
        keep(new GateRow(gate.get().hash(), gate.get().setAt(), gate.get().wrongTries() + 1, Optional.of(now)));
        boolean fits = Pin.fits(pin, gate.get().hash());
        if (fits) {
            keep(new GateRow(gate.get().hash(), gate.get().setAt(), 0, Optional.empty()));
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
