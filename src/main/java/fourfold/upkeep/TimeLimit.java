// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import fourfold.store.Ticks;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.function.LongConsumer;

/**
 * How long the library may work on a file before it is stopped: some seconds of work, and more for a larger file. A file that was
 * made to keep it busy for ever ends in an error that says so.
 */
final class TimeLimit {
    private static final Duration PATIENCE = Duration.ofSeconds(8);
    private static final long SLOWEST_BYTES_PER_SECOND = 4L << 20;

    private final long started = System.nanoTime();
    private final Duration workedBefore = worked();
    private final Duration longest;

    /** Begins now, for a file of this size. */
    TimeLimit(long bytes) {
        longest = PATIENCE.plusSeconds(bytes / SLOWEST_BYTES_PER_SECOND);
    }

    /** Stops this connection when the time is over; what it does then fails as interrupted. */
    void watch(Connection connection) throws SQLException {
        watch(connection, ticks -> {});
    }

    /** The same, and tells how many ticks of {@link Ticks} there were. */
    void watch(Connection connection, LongConsumer tick) throws SQLException {
        Ticks.watch(connection, ticks -> {
            tick.accept(ticks);
            return !isOver();
        });
    }

    /** What other programs of a busy computer take is not counted, where the system says how long this one has worked. */
    private boolean isOver() {
        boolean late = System.nanoTime() - started > longest.toNanos();
        return late && (worked().isZero() || worked().minus(workedBefore).compareTo(longest) > 0);
    }

    private static Duration worked() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    }
}
