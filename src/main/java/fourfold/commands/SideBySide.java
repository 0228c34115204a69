package fourfold.commands;

import fourfold.facts.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Takes answers while they are read and hands them on, in order and by the batch, to a second thread that folds them; so
 * years of practice take the longer of both times and not their sum. A short log never starts a thread.
 */
final class SideBySide implements Consumer<Answer> {
    private static final int BATCH = 512;
    private static final int BATCHES_WAITING = 16;

    private final Consumer<Answer> fold;
    private final BlockingQueue<List<Answer>> waiting = new ArrayBlockingQueue<>(BATCHES_WAITING);
    private List<Answer> batch = new ArrayList<>(BATCH);
    private @Nullable Thread folding;
    private @Nullable RuntimeException failure;

    SideBySide(Consumer<Answer> fold) {
        this.fold = fold;
    }

    @Override
    public void accept(Answer answer) {
        batch.add(answer);
        if (batch.size() == BATCH) {
            if (folding == null) {
                folding = new Thread(this::foldAll, "folding");
                folding.setDaemon(true);
                folding.start();
            }
            handOn(batch);
            batch = new ArrayList<>(BATCH);
        }
    }

    /** Waits until everything is folded. What the fold threw, if anything, is thrown here. */
    void finish() {
        if (folding == null) {
            batch.forEach(fold);
            return;
        }
        handOn(batch);
        if (!batch.isEmpty()) {
            handOn(List.of());
        }
        try {
            folding.join();
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
        if (failure != null) {
            throw failure;
        }
    }

    private void handOn(List<Answer> full) {
        try {
            waiting.put(full);
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    private void foldAll() {
        try {
            for (List<Answer> next = waiting.take(); !next.isEmpty(); next = waiting.take()) {
                // After a failure the rest is only taken away, so that the reader is never left waiting.
                if (failure == null) {
                    fold(next);
                }
            }
        } catch (InterruptedException e) {
            failure = interrupted(e);
        }
    }

    private void fold(List<Answer> answers) {
        try {
            answers.forEach(fold);
        } catch (RuntimeException e) {
            failure = e;
        }
    }

    private static IllegalStateException interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted while the answers were read", e);
    }
}
