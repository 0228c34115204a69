package fourfold.simulation;

import java.time.Duration;
import java.util.List;

/**
 * What an oracle aims at.
 *
 * @param horizons how far ahead it looks; each counts the same
 * @param enough the strength beyond which more is worth little: about what fluency needs
 * @param dueBelow a trace is worth asking while its strength at the first horizon is below this
 * @param mostWaiting no new family while more traces are worth asking than this
 */
public record Foresight(List<Duration> horizons, double enough, double dueBelow, int mostWaiting) {
    public Foresight {
        horizons = List.copyOf(horizons);
    }
}
