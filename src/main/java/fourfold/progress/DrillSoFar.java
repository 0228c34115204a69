package fourfold.progress;

import fourfold.facts.Answer;
import fourfold.facts.Question;
import fourfold.facts.Sitting;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The drill that is going on, as far as it has come. Immutable: each answer makes a new one that leans on the one before,
 * so nothing is copied.
 */
public final class DrillSoFar {
    private final Sitting sitting;
    private final Duration paused;
    private final int size;
    private final int turns;
    private final Optional<DrillSoFar> before;
    private final Optional<Answer> last;

    private DrillSoFar(
            Sitting sitting, Duration paused, int size, int turns, Optional<DrillSoFar> before, Optional<Answer> last) {
        this.sitting = sitting;
        this.paused = paused;
        this.size = size;
        this.turns = turns;
        this.before = before;
        this.last = last;
    }

    /** A drill that has only begun. */
    public static DrillSoFar begun(Sitting sitting) {
        return new DrillSoFar(sitting, Duration.ZERO, 0, 0, Optional.empty(), Optional.empty());
    }

    /** With one more answer. */
    public DrillSoFar after(Answer answer) {
        return new DrillSoFar(
                sitting,
                paused,
                size + 1,
                turns + (answer.purpose().isFromMemory() ? 1 : 0),
                Optional.of(this),
                Optional.of(answer));
    }

    /** With so much more time spent in pauses. */
    public DrillSoFar pausedFor(Duration more) {
        return new DrillSoFar(sitting, paused.plus(more), size, turns, before, last);
    }

    /** The drill as the log knows it. */
    public Sitting sitting() {
        return sitting;
    }

    /** How many prompts were answered, copies and answers in view included. */
    public int size() {
        return size;
    }

    /** How many questions were asked from memory. */
    public int turns() {
        return turns;
    }

    /** Time practised: since the beginning, pauses left out; never negative. */
    public Duration practised(Instant at) {
        Duration practised = Duration.between(sitting.startedAt(), at).minus(paused);
        return practised.isNegative() ? Duration.ZERO : practised;
    }

    /** Whether the planned time is over. */
    public boolean isOver(Instant at) {
        return practised(at).compareTo(sitting.planned()) >= 0;
    }

    /** The answers, newest first. */
    public Iterable<Answer> newestFirst() {
        return () -> new Backwards(this);
    }

    /** The answers, oldest first. */
    public List<Answer> answers() {
        List<Answer> all = new ArrayList<>(size);
        newestFirst().forEach(all::add);
        Collections.reverse(all);
        return all;
    }

    /** The newest answer. */
    public Optional<Answer> last() {
        return last;
    }

    /** The last question asked from memory. */
    public Optional<Question> lastQuestion() {
        for (Answer answer : newestFirst()) {
            if (answer.purpose().isFromMemory()) {
                return answer.question();
            }
        }
        return Optional.empty();
    }

    private static final class Backwards implements java.util.Iterator<Answer> {
        private DrillSoFar here;

        Backwards(DrillSoFar start) {
            here = start;
        }

        @Override
        public boolean hasNext() {
            return here.last.isPresent();
        }

        @Override
        public Answer next() {
            Answer answer = here.last.orElseThrow(java.util.NoSuchElementException::new);
            here = here.before.orElseThrow();
            return answer;
        }
    }
}
