// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The drill that is going on, as far as it has come. Immutable: each answer makes a new one that leans on the one before,
 * so nothing is copied.
 */
public final class DrillSoFar {
    private static final int TRACE = 0xff;
    private static final int RIGHT = 0x100;
    private static final int IN_VIEW = 0x200;
    private static final int NO_QUESTION = -1;

    private final DrillSession session;
    private final Duration paused;
    private final int size;
    private final int turns;
    private final Optional<DrillSoFar> before;
    private final Optional<Answer> last;
    /** What each answer was, oldest first; a later drill has a copy of its own. */
    private final int[] codes;

    private DrillSoFar(
            DrillSession session,
            Duration paused,
            int turns,
            Optional<DrillSoFar> before,
            Optional<Answer> last,
            int[] codes) {
        this.session = session;
        this.paused = paused;
        this.size = codes.length;
        this.codes = codes;
        this.turns = turns;
        this.before = before;
        this.last = last;
    }

    /** A drill that has only begun. */
    public static DrillSoFar begun(DrillSession session) {
        return new DrillSoFar(session, Duration.ZERO, 0, Optional.empty(), Optional.empty(), new int[0]);
    }

    /** With one more answer. */
    public DrillSoFar after(Answer answer) {
        int[] more = Arrays.copyOf(codes, size + 1);
        more[size] = code(answer);
        return new DrillSoFar(
                session,
                paused,
                turns + (answer.purpose().isFromMemory() ? 1 : 0),
                Optional.of(this),
                Optional.of(answer),
                more);
    }

    /** With so much more time spent in pauses. */
    public DrillSoFar pausedFor(Duration more) {
        return new DrillSoFar(session, paused.plus(more), turns, before, last, codes);
    }

    /** The drill as the log knows it. */
    public DrillSession session() {
        return session;
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
        Duration practised = Duration.between(session.startedAt(), at).minus(paused);
        return practised.isNegative() ? Duration.ZERO : practised;
    }

    /** Whether the planned time is over. */
    public boolean isOver(Instant at) {
        return practised(at).compareTo(session.planned()) >= 0;
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

    private static int code(Answer answer) {
        return answer.question()
                .map(q -> q.traceIndex()
                        | (answer.isCorrect() ? RIGHT : 0)
                        | (answer.purpose() == Purpose.INTRODUCE ? IN_VIEW : 0))
                .orElse(NO_QUESTION);
    }

    /** The index of the trace the answer drew on, counted from 0, the oldest; −1 for a number that was copied. */
    public int traceAt(int place) {
        return codes[place] == NO_QUESTION ? NO_QUESTION : codes[place] & TRACE;
    }

    /** Whether the answer at that place was right; false for a number that was copied. */
    public boolean wasRightAt(int place) {
        return codes[place] != NO_QUESTION && (codes[place] & RIGHT) != 0;
    }

    /** Whether the answer at that place was typed with the right one in view. */
    public boolean wasInViewAt(int place) {
        return codes[place] != NO_QUESTION && (codes[place] & IN_VIEW) != 0;
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
