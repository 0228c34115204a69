package fourfold.home;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;

/** What a parent decides for a child. Every method may fail with {@link RecordsFailure}. */
public final class SteerPractice {
    private final Store store;
    private final SessionClock moments;

    SteerPractice(Store store, SessionClock moments) {
        this.store = store;
        this.moments = moments;
    }

    /** Keeps actions of the parent, all with the same time. */
    public void keep(Child child, List<ParentAction> actions, Instant at) {
        store.keepActions(actions.stream()
                .map(action -> new ActionRecord(
                        UUID.randomUUID(),
                        child.id(),
                        at.truncatedTo(ChronoUnit.MILLIS),
                        moments.zoneOffsetMinutes(at),
                        action))
                .toList());
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
