// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * The one clock: wall time read once at the start, and from then on carried forward by the monotonic clock, so that no
 * time between two keys can be negative or jump when the computer's clock is set.
 *
 * <p>The monotonic clock of some systems stands still while the computer sleeps (Linux: CLOCK_MONOTONIC, which Java reads,
 * "does not count time that the system is suspended", clock_gettime(2)). {@link #sleptSince} finds that out by the wall
 * clock, and {@link #catchUp} moves this clock forward to it; back it is never moved.
 */
public final class SessionClock {
    /** The wall clock may run this far ahead of the monotonic one between two looks: it is being put right. */
    private static final Duration AHEAD = Duration.ofSeconds(2);

    private final long startNanos;
    private final LongSupplier nanos;
    private final ZoneId zone;
    private final Optional<Supplier<Instant>> wall;
    private volatile Instant start;
    private long lookedNanos;
    private Instant lookedWall;

    /**
     * A clock.
     *
     * @param start wall time now
     * @param zone the zone the home lives in
     * @param nanos the monotonic clock, such as {@code System::nanoTime}
     */
    public SessionClock(Instant start, ZoneId zone, LongSupplier nanos) {
        this(start, zone, nanos, Optional.empty());
    }

    /**
     * The same with a wall clock to look at again, so that a computer that slept is found out.
     *
     * @param wall the wall clock, such as {@code Instant::now}
     */
    public SessionClock(Supplier<Instant> wall, ZoneId zone, LongSupplier nanos) {
        this(wall.get(), zone, nanos, Optional.of(wall));
    }

    private SessionClock(Instant start, ZoneId zone, LongSupplier nanos, Optional<Supplier<Instant>> wall) {
        this.start = start;
        this.zone = zone;
        this.nanos = nanos;
        this.wall = wall;
        this.startNanos = nanos.getAsLong();
        this.lookedNanos = startNanos;
        this.lookedWall = start;
    }

    /**
     * Whether the computer slept since this was last asked, or the program stood still.
     *
     * @param longest a longer time between two calls counts as standing still, whatever the wall clock says
     * @return the moment it was last asked before, from which on no time can be trusted; empty if all is well
     */
    public Optional<Instant> sleptSince(Duration longest) {
        if (wall.isEmpty()) {
            return Optional.empty();
        }
        Instant before = at(lookedNanos);
        long now = reading();
        Instant wallNow = wall.get().get();
        Duration counted = Duration.ofNanos(now - lookedNanos);
        Duration passed = Duration.between(lookedWall, wallNow);
        lookedNanos = now;
        lookedWall = wallNow;
        boolean slept = passed.minus(counted).compareTo(AHEAD) > 0 || counted.compareTo(longest) > 0;
        return slept ? Optional.of(before) : Optional.empty();
    }

    /** Moves this clock forward to the wall clock; a wall clock that is behind changes nothing. */
    public void catchUp() {
        Duration behind = Duration.between(now(), wall.map(Supplier::get).orElseGet(this::now));
        if (!behind.isNegative()) {
            start = start.plus(behind);
        }
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
