package fourfold.screens.child;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * What a page shows while it waits for the file. In the ordinary case nothing, for the file is quick; after a twentieth of
 * a second a point, so that the key is seen to have been taken; after a second, and at once for a key that comes
 * meanwhile, a calm word. Each such key changes the points, for it is not heard, and should not seem lost.
 */
final class WaitSign {
    /** Less than two ticks of the loop, so that every key is answered within 100 ms. */
    private static final Duration SOON = Duration.ofMillis(40);

    private static final Duration LONG = Duration.ofSeconds(1);
    private static final int POINTS = 3;

    private final String word;
    private Optional<Instant> since = Optional.empty();
    private int early;
    private String shown = "";

    /** With the calm word, without a point at its end. */
    WaitSign(String word) {
        this.word = word;
    }

    /** The page waits from now on. */
    void begin(Instant at) {
        since = Optional.of(at);
        early = 0;
        shown = "";
    }

    /** The page waits no more. */
    void end() {
        since = Optional.empty();
        shown = "";
    }

    /** Whether the page waits. */
    boolean isWaiting() {
        return since.isPresent();
    }

    /** A key came while the page waits. */
    void early(Instant at) {
        early++;
        shown = text(at);
    }

    /** Time went by; true if the sign has changed. */
    boolean tick(Instant at) {
        String before = shown;
        shown = text(at);
        return !before.equals(shown);
    }

    private String text(Instant at) {
        Duration waited = since.map(s -> Duration.between(s, at)).orElse(Duration.ZERO);
        if (early == 0 && waited.compareTo(SOON) < 0) {
            return "";
        }
        return (early > 0 || waited.compareTo(LONG) >= 0 ? word : "") + ".".repeat(1 + early % POINTS);
    }

    /** What stands there now; empty for nothing. */
    String shown() {
        return shown;
    }
}
