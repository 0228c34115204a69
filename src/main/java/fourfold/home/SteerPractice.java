// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;

/** What a parent decides for a child. Every method may fail with {@link RecordsFailure}. */
public final class SteerPractice {
    /** A clock is put right by less than this from one act to the next. Our own choice. */
    private static final Duration PUT_RIGHT = Duration.ofSeconds(2);

    private final Store store;
    private final SessionClock moments;

    SteerPractice(Store store, SessionClock moments) {
        this.store = store;
        this.moments = moments;
    }

    /** Keeps actions of the parent, all with the same time; what is kept later counts as done later. */
    public void keep(Child child, List<ParentAction> actions, Instant at) {
        if (actions.isEmpty()) {
            return;
        }
        Instant after = after(child, at.truncatedTo(ChronoUnit.MILLIS));
        store.keepActions(actions.stream()
                .map(action ->
                        new ActionRecord(UUID.randomUUID(), child.id(), after, moments.zoneOffsetMinutes(at), action))
                .toList());
    }

    /** The time, or the millisecond after the newest act where the clock has not gone on since or was put right a little. */
    private Instant after(Child child, Instant at) {
        return store.actions(child.id()).stream()
                .map(ActionRecord::at)
                .max(Comparator.naturalOrder())
                .filter(newest -> !newest.isBefore(at) && newest.isBefore(at.plus(PUT_RIGHT)))
                .map(newest -> newest.plusMillis(1))
                .orElse(at);
    }

    /**
     * Takes back the last thing that was done and still holds: all its actions have the same time. Who the child is was
     * not done here, and is not taken back here.
     *
     * @return what was taken back; empty if there is nothing to take back
     */
    public List<ParentAction> undo(Child child, Instant at) {
        List<ActionRecord> inForce = ActionRecord.inForce(store.actions(child.id())).stream()
                .filter(a -> !(a.action() instanceof ParentAction.Choose choose && choose.isOfWhoTheChildIs()))
                .toList();
        if (inForce.isEmpty()) {
            return List.of();
        }
        Instant last = inForce.get(inForce.size() - 1).at();
        List<ActionRecord> together =
                inForce.stream().filter(a -> a.at().equals(last)).toList();
        keep(
                child,
                together.stream()
                        .<ParentAction>map(a -> new ParentAction.Undo(a.id()))
                        .toList(),
                at);
        return together.stream().map(ActionRecord::action).toList();
    }
}
