package fourfold.upkeep;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import org.sqlite.ProgressHandler;

/**
 * How long the library may work on a file before it is stopped: some seconds, and more for a larger file. A file that was
 * made to keep it busy for ever ends in an error that says so.
 */
final class TimeLimit {
    private static final Duration PATIENCE = Duration.ofSeconds(8);
    private static final long SLOWEST_BYTES_PER_SECOND = 4L << 20;
    private static final int STEPS_BETWEEN_LOOKS = 10_000;

    private final long started = System.nanoTime();
    private final Duration longest;

    /** Begins now, for a file of this size. */
    TimeLimit(long bytes) {
        longest = PATIENCE.plusSeconds(bytes / SLOWEST_BYTES_PER_SECOND);
    }

    /** Stops this connection when the time is over; what it does then fails as interrupted. */
    void watch(Connection connection) throws SQLException {
        ProgressHandler.setHandler(connection, STEPS_BETWEEN_LOOKS, new ProgressHandler() {
            @Override
            protected int progress() {
                return System.nanoTime() - started > longest.toNanos() ? 1 : 0;
            }
        });
    }
}
