package fourfold.screens;

import java.time.Instant;
import java.time.ZoneId;
import java.util.function.LongSupplier;

/**
 * The one clock: wall time read once at the start, and from then on carried forward by the monotonic clock, so that no
 * time between two keys can be negative or jump when the computer's clock is set.
 */
public final class Moments {
    private final Instant start;
    private final long startNanos;
    private final LongSupplier nanos;
    private final ZoneId zone;

    /**
     * A clock.
     *
     * @param start wall time now
     * @param zone the zone the home lives in
     * @param nanos the monotonic clock, such as {@code System::nanoTime}
     */
    public Moments(Instant start, ZoneId zone, LongSupplier nanos) {
        this.start = start;
        this.zone = zone;
        this.nanos = nanos;
        this.startNanos = nanos.getAsLong();
    }

    /** Now. */
    public Instant now() {
        return at(reading());
    }

    /** The monotonic clock's reading now, in nanoseconds. */
    public long reading() {
        return nanos.getAsLong();
    }

    /** The instant of a reading of the monotonic clock. */
    public Instant at(long reading) {
        return start.plusNanos(reading - startNanos);
    }

    /** Minutes by which local time is ahead of UTC at an instant. */
    public int zoneOffsetMinutes(Instant at) {
        return zone.getRules().getOffset(at).getTotalSeconds() / 60;
    }

    /** The zone the home lives in. */
    public ZoneId zone() {
        return zone;
    }
}
