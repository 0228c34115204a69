// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Answer;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Answers made of rows, some thousand at a time: while those are used, a second thread reads the next. To read them takes
 * about as long as to fold them, and most computers have two processors. Which of the two threads makes
 * answers of the rows is decided by which has less to do just now.
 */
final class ReadAhead {
    /** So many of most children are all; no second thread is begun for them. */
    private static final int AT_ONCE = 1_000;

    private final ResultSet rows;
    private final AnswerRow reader;
    private final BlockingQueue<Batch> ready = new ArrayBlockingQueue<>(4);
    private volatile boolean over;

    ReadAhead(ResultSet rows, AnswerRow reader) {
        this.rows = rows;
        this.reader = reader;
    }

    /**
     * Rows that follow each other.
     *
     * @param read each an {@link Answer}, or the {@link Refusal} of a row that is none, or still what stood in the row
     * @param last whether there are no more
     * @param failure why there are no more, if the rest can't be read
     */
    private record Batch(List<Object> read, boolean last, Optional<Exception> failure) {}

    /** Hands over all of them in order, in the thread of the caller; what a receiver throws is thrown. */
    void handOver(Consumer<Answer> each, Consumer<Refusal> lost) throws SQLException {
        Batch first = next();
        if (first.last()) {
            give(first, each, lost);
            return;
        }
        ExecutorService second = Executors.newSingleThreadExecutor(ReadAhead::thread);
        CompletableFuture<Void> reading = CompletableFuture.runAsync(this::readAll, second);
        try {
            Batch batch = first;
            while (!batch.last()) {
                give(batch, each, lost);
                batch = taken(reading);
            }
            give(batch, each, lost);
        } finally {
            // Whoever closes the rows must be alone with them.
            over = true;
            ready.clear();
            second.shutdown();
            reading.join();
        }
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "answers");
        thread.setDaemon(true);
        return thread;
    }

    private Batch taken(CompletableFuture<Void> reading) {
        try {
            Batch batch = ready.poll(1, TimeUnit.SECONDS);
            while (batch == null) {
                if (reading.isCompletedExceptionally()) {
                    reading.join();
                }
                batch = ready.poll(1, TimeUnit.SECONDS);
            }
            return batch;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading answers", e);
        }
    }

    private void readAll() {
        boolean more = true;
        while (more && !over) {
            Batch batch = next();
            if (!ready.isEmpty()) {
                batch.read().replaceAll(ReadAhead::made);
            }
            more = !batch.last();
            try {
                ready.put(batch);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    private Batch next() {
        List<Object> read = new ArrayList<>(AT_ONCE);
        try {
            while (read.size() < AT_ONCE) {
                if (!rows.next()) {
                    return new Batch(read, true, Optional.empty());
                }
                read.add(row());
            }
            return new Batch(read, false, Optional.empty());
        } catch (SQLException | RuntimeException e) {
            return new Batch(read, true, Optional.of(e));
        }
    }

    private Object row() throws SQLException {
        try {
            return reader.raw(rows);
        } catch (Refusal e) {
            return e;
        }
    }

    private static Object made(Object read) {
        try {
            return read instanceof AnswerRow.Raw raw ? raw.answer() : read;
        } catch (Refusal e) {
            return e;
        }
    }

    private static void give(Batch batch, Consumer<Answer> each, Consumer<Refusal> lost) throws SQLException {
        for (Object read : batch.read()) {
            Object one = made(read);
            if (one instanceof Answer answer) {
                each.accept(answer);
            } else {
                lost.accept((Refusal) one);
            }
        }
        Exception failure = batch.failure().orElse(null);
        if (failure instanceof SQLException library) {
            throw library;
        }
        if (failure instanceof RuntimeException unforeseen) {
            throw unforeseen;
        }
    }
}
