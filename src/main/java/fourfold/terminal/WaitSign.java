// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is shown while something in the world outside is waited for. In the ordinary case nothing, for it is quick; after
 * a twentieth of a second a point, so that the key is seen to have been taken; after a second, and at once for a key that
 * comes meanwhile, a calm word. Each such key changes the points, so that it does not seem lost.
 *
 * @param word the calm word, without a point at its end
 * @param since when the wait began; empty while nothing is waited for
 * @param early how many keys came meanwhile
 * @param shown what stands there now; empty for nothing
 */
public record WaitSign(String word, Optional<Instant> since, int early, String shown) {
    /** Less than two ticks of the loop, so that every key is answered within 100 ms. */
    private static final Duration SOON = Duration.ofMillis(40);

    private static final Duration LONG = Duration.ofSeconds(1);
    private static final int POINTS = 3;

    /** Nothing is waited for. */
    public WaitSign(String word) {
        this(word, Optional.empty(), 0, "");
    }

    /** A wait begins. */
    public WaitSign begin(Instant at) {
        return new WaitSign(word, Optional.of(at), 0, "");
    }

    /** Nothing is waited for any more. */
    public WaitSign end() {
        return new WaitSign(word);
    }

    /** Whether something is waited for. */
    public boolean isWaiting() {
        return since.isPresent();
    }

    /** A key came meanwhile. */
    public WaitSign early(Instant at) {
        return new WaitSign(word, since, early + 1, text(at, early + 1));
    }

    /** Time went by; this very sign if it looks the same. */
    public WaitSign tick(Instant at) {
        return tick(at, OptionalInt.empty());
    }

    /**
     * The same.
     *
     * @param percent how far it has come; empty or 0 if that is not known
     */
    public WaitSign tick(Instant at, OptionalInt percent) {
        String now = text(at, early);
        if (now.startsWith(word) && percent.orElse(0) > 0) {
            now += " " + percent.orElse(0) + " %";
        }
        return now.equals(shown) ? this : new WaitSign(word, since, early, now);
    }

    private String text(Instant at, int keys) {
        Duration waited = since.map(s -> Duration.between(s, at)).orElse(Duration.ZERO);
        if (keys == 0 && waited.compareTo(SOON) < 0) {
            return "";
        }
        return (keys > 0 || waited.compareTo(LONG) >= 0 ? word : "") + ".".repeat(1 + keys % POINTS);
    }
}
