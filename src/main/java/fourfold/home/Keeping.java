// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.drill.Effect;
import fourfold.log.RecordsFailure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * What a drill has still to keep, in order. When the disk does not take it, the child may go on: then all is held in
 * memory, tried again from time to time, and is reported at the end if it is lost.
 */
public final class Keeping {
    /** How long to leave the disk alone after it refused; each try may wait some seconds for another program. */
    private static final Duration BETWEEN_TRIES = Duration.ofSeconds(15);

    /**
     * How it stands.
     *
     * @param behind whether anything is only in memory
     * @param answers how many answers are
     * @param goingOn whether the child goes on all the same
     * @param failure why the disk did not take it, once it refused
     * @param lastTry when the disk was last asked
     */
    public record State(
            boolean behind, int answers, boolean goingOn, Optional<RecordsFailure> failure, Instant lastTry) {
        /** Nothing was to be kept yet. */
        public static final State NOTHING = new State(false, 0, false, Optional.empty(), Instant.EPOCH);

        /** Whether the disk was left alone long enough to be asked again. */
        public boolean isRested(Instant at) {
            return Duration.between(lastTry, at).compareTo(BETWEEN_TRIES) >= 0;
        }

        /** The same state after the child chose to go on without what is not kept. */
        public State andGoesOn() {
            return new State(behind, answers, true, failure, lastTry);
        }
    }

    private final Practice practice;
    private final Deque<Effect> unkept = new ArrayDeque<>();
    private boolean goingOn;
    private Optional<RecordsFailure> failure = Optional.empty();
    private Instant lastTry = Instant.EPOCH;

    /** Keeps by this. */
    public Keeping(Practice practice) {
        this.practice = practice;
    }

    /** Takes more to be kept, and keeps it now unless the disk refused a moment ago; true if nothing is left. */
    public boolean keep(List<Effect> effects, Instant at) {
        unkept.addAll(effects);
        boolean rests = goingOn && !state().isRested(at);
        return unkept.isEmpty() || (!rests && tryNow(at));
    }

    /** Keeps all that is left, in order; true if nothing is left. */
    public boolean tryNow(Instant at) {
        lastTry = at;
        try {
            while (!unkept.isEmpty()) {
                Effect effect = unkept.element();
                if (effect instanceof Effect.Begin begin) {
                    practice.begin(begin.session());
                } else if (effect instanceof Effect.Keep keep) {
                    practice.keep(keep.answer());
                }
                unkept.remove();
            }
            goingOn = false;
        } catch (RecordsFailure e) {
            failure = Optional.of(e);
        }
        return unkept.isEmpty();
    }

    /** The present state. */
    public State state() {
        return new State(isBehind(), answers(), goingOn, failure, lastTry);
    }

    /** The child goes on though something is not kept. */
    public void goOn() {
        goingOn = true;
    }

    /** Whether the child goes on though something is not kept. */
    public boolean isGoingOn() {
        return goingOn;
    }

    /** How many answers are only in memory. */
    public int answers() {
        return answers(unkept);
    }

    /** How many answers are among them. */
    public static int answers(Collection<Effect> effects) {
        return (int) effects.stream().filter(e -> e instanceof Effect.Keep).count();
    }

    /** Whether anything is only in memory. */
    public boolean isBehind() {
        return !unkept.isEmpty();
    }

    /** Why the disk did not take it, once it refused. */
    public Optional<RecordsFailure> failure() {
        return failure;
    }
}
