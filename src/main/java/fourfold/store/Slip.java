package fourfold.store;

import fourfold.facts.Answer;
import fourfold.facts.Sitting;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Answers of the drill at the keyboard that are on the disk but not yet in the family's file. To put an answer into the
 * file takes several forced writes, to write it on the slip takes one; so the child waits for the slip alone, and the file
 * follows while the next question is read. Putting the same answers in twice changes nothing, so a slip needs no order
 * kept between it and the file.
 */
final class Slip {
    private final SlipFile file;
    private final Sitting sitting;
    private final List<Answer> waiting = new ArrayList<>();
    private int last;
    private boolean broken;
    private boolean stuck;

    private Slip(SlipFile file, Sitting sitting) {
        this.file = file;
        this.sitting = sitting;
    }

    /** A slip for a drill that has no answers yet; empty where the disk can't do what a slip needs, such as locks. */
    static Optional<Slip> of(Path store, Sitting sitting) {
        try {
            return Optional.of(new Slip(SlipFile.make(store, sitting.id()), sitting));
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    /**
     * Writes an answer on the slip if it is the drill's next and there is room.
     *
     * @param answer with times as the file keeps them
     * @return false if it has to go into the file at once
     */
    boolean takes(Answer answer) {
        boolean next = answer.drill().equals(sitting.id())
                && answer.child().equals(sitting.child())
                && answer.position() == last + 1
                && SlipRow.fits(answer);
        if (broken || stuck || !next || waiting.size() == SlipFile.ROWS || !file.isThere()) {
            return false;
        }
        try {
            file.write(waiting.size(), answer);
        } catch (IOException e) {
            broken = true;
            return false;
        }
        waiting.add(answer);
        last = answer.position();
        return true;
    }

    /** What is not yet in the file, in order. */
    List<Answer> waiting() {
        return List.copyOf(waiting);
    }

    /** What waited is in the file now. */
    void settled() {
        waiting.clear();
        stuck = false;
    }

    /** What waits could not be put into the file: the next answer is to meet the same trouble, and tell of it. */
    void stick() {
        stuck = true;
    }

    /** Whether there is something to put into the file and the last try did not fail. */
    boolean isReady() {
        return !stuck && !waiting.isEmpty();
    }

    /** An answer went into the file without the slip. */
    void passed(Answer answer) {
        if (answer.drill().equals(sitting.id())) {
            last = Math.max(last, answer.position());
        }
    }

    /** The drill is over: what waits is left for the next start, and an empty slip is taken away. */
    void end() {
        if (waiting.isEmpty()) {
            file.delete();
        } else {
            file.leave();
        }
    }

    /** The name of its file, for a message. */
    @Override
    public String toString() {
        return file.toString();
    }
}
