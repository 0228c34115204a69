// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;

/**
 * Adds rows to a table, many with one statement: what the library does for a statement takes longer than what it does for
 * a row (2,000,000 answers one by one 4.7 s of work, by fifties 2.8 s). If one of them is refused they are tried one by
 * one. Of many, a second thread adds those that came while the caller makes the next; until {@link #end} nothing else may be
 * done with the connection. Its transaction is the caller's.
 */
public final class ManyRows implements AutoCloseable {
    private static final int AT_ONCE = 50;

    /** So many wait before the second thread begins with them. */
    private static final int HANDED_OVER = 20 * AT_ONCE;

    /** Is told, by whichever thread, of a row that breaks a rule of the tables. */
    public interface Refused {
        /** The row's values, and what the library said. */
        void row(SQLException reason, @Nullable Object... values) throws SQLException;
    }

    private final PreparedStatement many;
    private final PreparedStatement one;
    private final Refused refused;
    private Optional<ExecutorService> second = Optional.empty();
    private CompletableFuture<Optional<Exception>> adding = CompletableFuture.completedFuture(Optional.empty());
    private List<@Nullable Object[]> waiting = new ArrayList<>();

    /** Rows of these columns. */
    public ManyRows(Connection connection, String table, List<String> columns, Refused refused) throws SQLException {
        String insert = "INSERT INTO " + table + " (" + String.join(", ", columns) + ") VALUES ";
        String row = "(" + String.join(", ", Collections.nCopies(columns.size(), "?")) + ")";
        this.one = connection.prepareStatement(insert + row);
        this.many = connection.prepareStatement(insert + String.join(", ", Collections.nCopies(AT_ONCE, row)));
        this.refused = refused;
    }

    /** Adds a row, perhaps later: all are there after {@link #end}. */
    public void add(@Nullable Object... values) throws SQLException {
        waiting.add(values.clone());
        if (waiting.size() == HANDED_OVER) {
            await();
            List<@Nullable Object[]> rows = waiting;
            waiting = new ArrayList<>(HANDED_OVER);
            ExecutorService thread = second.orElseGet(() -> Executors.newSingleThreadExecutor(ManyRows::thread));
            second = Optional.of(thread);
            adding = CompletableFuture.supplyAsync(() -> failure(rows), thread);
        }
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "rows");
        thread.setDaemon(true);
        return thread;
    }

    /** Adds what waits. */
    public void end() throws SQLException {
        await();
        List<@Nullable Object[]> rows = waiting;
        waiting = new ArrayList<>();
        addAll(rows);
    }

    /** Waits for the second thread; what failed there fails here. */
    private void await() throws SQLException {
        Exception failure = adding.join().orElse(null);
        adding = CompletableFuture.completedFuture(Optional.empty());
        if (failure instanceof SQLException library) {
            throw library;
        }
        if (failure instanceof RuntimeException other) {
            throw other;
        }
    }

    private Optional<Exception> failure(List<@Nullable Object[]> rows) {
        try {
            addAll(rows);
            return Optional.empty();
        } catch (SQLException | RuntimeException e) {
            return Optional.of(e);
        }
    }

    private void addAll(List<@Nullable Object[]> rows) throws SQLException {
        int from = 0;
        for (; from + AT_ONCE <= rows.size(); from += AT_ONCE) {
            addTogether(rows.subList(from, from + AT_ONCE));
        }
        for (@Nullable Object[] row : rows.subList(from, rows.size())) {
            addAlone(row);
        }
    }

    private void addTogether(List<@Nullable Object[]> rows) throws SQLException {
        int place = 1;
        for (@Nullable Object[] row : rows) {
            place = fill(many, place, row);
        }
        try {
            many.executeUpdate();
        } catch (SQLException e) {
            if (!Failure.isRule(e)) {
                throw e;
            }
            for (@Nullable Object[] row : rows) {
                addAlone(row);
            }
        }
    }

    private void addAlone(@Nullable Object... row) throws SQLException {
        fill(one, 1, row);
        try {
            one.executeUpdate();
        } catch (SQLException e) {
            if (!Failure.isRule(e)) {
                throw e;
            }
            refused.row(e, row);
        }
    }

    private static int fill(PreparedStatement statement, int first, @Nullable Object... row) throws SQLException {
        int place = first;
        for (Object value : row) {
            if (value instanceof Long number) {
                statement.setLong(place++, number);
            } else {
                statement.setObject(place++, value);
            }
        }
        return place;
    }

    @Override
    public void close() throws SQLException {
        adding.join();
        second.ifPresent(ExecutorService::shutdown);
        try (many;
                one) {
            waiting.clear();
        }
    }
}
