// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.home.Keeping;
import java.time.Instant;

/**
 * What a drill's page knows of the file.
 *
 * @param state what is kept and what is not, as it was when all that was asked for was done
 * @param open how much of what was asked for is not done yet
 * @param onTheWay how many answers are among it
 * @param ended whether the end of the drill was asked for
 */
record DrillFile(Keeping.State state, int open, int onTheWay, boolean ended) {
    /** Nothing was asked for yet. */
    static final DrillFile FRESH = new DrillFile(Keeping.State.NOTHING, 0, 0, false);

    /** Something more was asked for, with so many answers in it. */
    DrillFile asked(int answers) {
        return new DrillFile(state, open + 1, onTheWay + answers, ended);
    }

    /** Something is done. Only the last knows how all of them went. */
    DrillFile done(Keeping.State now) {
        return open > 1 ? new DrillFile(state, open - 1, onTheWay, ended) : new DrillFile(now, 0, 0, ended);
    }

    /** The child goes on though something is not kept. */
    DrillFile goingOn() {
        return new DrillFile(state.andGoesOn(), open, onTheWay, ended);
    }

    /** The end of the drill is asked for. */
    DrillFile ending() {
        return new DrillFile(state, open, onTheWay, true);
    }

    /** Whether something that was asked for is not done yet. */
    boolean isBusy() {
        return open > 0;
    }

    /** Whether the child goes on without, and the file had its rest. */
    boolean isToBeTried(Instant at) {
        return !isBusy() && state.goingOn() && state.isRested(at);
    }

    /** Whether the child goes on though something is not kept. */
    boolean isGoingOn() {
        return state.goingOn();
    }

    /** Whether anything is known to be only in memory. */
    boolean isBehind() {
        return state.behind();
    }

    /** How many answers are only in memory while the child goes on all the same. */
    int answersBehind() {
        return state.answers() + (state.goingOn() ? onTheWay : 0);
    }
}
