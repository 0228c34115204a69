// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One question put to the look ahead, and how far it was played.
 *
 * @param change what the parent changes in it; empty as things are, and for an earlier day
 * @param outlook from where it is played
 * @param toTheEnd whether each run goes to the last day, to count what is fluent then
 * @param wanted how many runs are enough, 1 or more
 * @param runs played so far
 */
record Play(Optional<Change> change, Outlook outlook, boolean toTheEnd, int wanted, List<Outlook.Run> runs) {
    Play {
        runs = List.copyOf(runs);
    }

    /** With one more run. */
    Play step() {
        List<Outlook.Run> more = new ArrayList<>(runs);
        more.add(toTheEnd ? outlook.toTheEnd(runs.size()) : outlook.run(runs.size()));
        return new Play(change, outlook, toTheEnd, wanted, more);
    }

    /** Whether more runs can't change what is told: that the range closes, or whether half of the runs get there. */
    boolean isDone() {
        return runs.size() >= wanted || (!toTheEnd && (change.isPresent() ? isOpen() : 2 * failed() > wanted));
    }

    private long failed() {
        return runs.stream().filter(r -> !r.isReached()).count();
    }

    /** Whether more than one of ten fail, so that the range can't close any more. */
    private boolean isOpen() {
        return 10 * failed() > wanted;
    }

    /** Whether all was played and the range closes. */
    boolean isClosed() {
        return isDone() && !isOpen();
    }

    /** What it came to. */
    Projection projection() {
        return outlook.projection(runs, wanted);
    }
}
