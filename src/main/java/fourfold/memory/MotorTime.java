package fourfold.memory;

import fourfold.facts.Answer;
import fourfold.facts.Surface;
import java.time.Duration;
import java.util.Optional;

/** Temporary. */
public final class MotorTime {
    private MotorTime() {}

    /** Temporary. */
    public static MotorTime unknown() {
        return new MotorTime();
    }

    /** Temporary. */
    public MotorTime after(Answer answer) {
        return this;
    }

    /** Temporary. */
    public boolean isKnown(Surface surface) {
        return false;
    }

    /** Temporary. */
    public Optional<Duration> thinking(Answer answer) {
        return answer.whole().map(w -> w.minusMillis(600));
    }
}
