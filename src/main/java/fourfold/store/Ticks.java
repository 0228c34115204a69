// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.LongPredicate;
import org.sqlite.ProgressHandler;

/** The steps of the database library while it does long work: the only sign it gives of how far it has come. */
public final class Ticks {
    /** Steps of the library's own machine between two ticks. */
    private static final int STEPS = 10_000;

    /**
     * A check of all pages and rows makes about one tick for so many bytes. Measured with 100,000 answers: 5,340 bytes in a
     * file made today, 8,200 in one brought up from an earlier schema.
     */
    private static final long CHECKED_BYTES = 7_000;

    private Ticks() {}

    /**
     * Calls this at each tick from now on, with the number of ticks so far.
     *
     * @param tick is quick, and says whether the library's work may go on
     */
    public static void watch(Connection connection, LongPredicate tick) throws SQLException {
        ProgressHandler.setHandler(connection, STEPS, new ProgressHandler() {
            private long ticks;

            @Override
            protected int progress() {
                ticks++;
                return tick.test(ticks) ? 0 : 1;
            }
        });
    }

    /** How many ticks the library's check of a file of this size makes, about. */
    public static long ofCheck(long bytes) {
        return bytes / CHECKED_BYTES;
    }

    /** Done of all, in percent; 99 at most, for what is expected is no more than that. */
    public static int share(long done, long all) {
        return all <= 0 ? 0 : (int) Math.min(99, 100 * done / all);
    }
}
