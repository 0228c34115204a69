package fourfold.store;

import fourfold.facts.Answer;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Takes answers while they are read and hands them on, in order, on a second thread; so years of practice take the longer
 * of both times and not their sum. A short log never starts a thread.
 */
final class SideBySide implements Consumer<AnswerBatch>, AutoCloseable {
    private static final int BATCHES_WAITING = 16;
    private static final AnswerBatch END = new AnswerBatch(new UUID(0, 0));

    private final Consumer<Answer> each;
    private final BlockingQueue<AnswerBatch> waiting = new ArrayBlockingQueue<>(BATCHES_WAITING);
    private @Nullable Thread handing;
    private @Nullable RuntimeException failure;
    private boolean ended;

    SideBySide(Consumer<Answer> each) {
        this.each = each;
    }

    @Override
    public void accept(AnswerBatch batch) {
        if (handing == null && !batch.isFull()) {
            batch.forEach(each);
            return;
        }
        if (handing == null) {
            handing = new Thread(this::handOnAll, "answers");
            handing.setDaemon(true);
            handing.start();
        }
        put(batch);
    }

    /** Waits until everything is handed on. What the receiver threw, if anything, is thrown here. */
    void finish() {
        close();
        if (failure != null) {
            throw failure;
        }
    }

    /** Ends the second thread, after what it was given. */
    @Override
    public void close() {
        if (handing == null || ended) {
            return;
        }
        ended = true;
        put(END);
        try {
            handing.join();
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    private void put(AnswerBatch batch) {
        try {
            waiting.put(batch);
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    @SuppressWarnings("ReferenceEquality") // The end is one object and no other.
    private void handOnAll() {
        try {
            for (AnswerBatch next = waiting.take(); next != END; next = waiting.take()) {
                // After a failure the rest is only taken away, so that the reader is never left waiting.
                if (failure == null) {
                    handOn(next);
                }
            }
        } catch (InterruptedException e) {
            failure = interrupted(e);
        }
    }

    private void handOn(AnswerBatch batch) {
        try {
            batch.forEach(each);
        } catch (RuntimeException e) {
            failure = e;
        }
    }

    private static IllegalStateException interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted while the answers were read", e);
    }
}
