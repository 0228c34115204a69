// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.InvalidValue;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.store.Store;
import fourfold.upkeep.Backups;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The children of a home. Every method may fail with {@link RecordsFailure}. */
public final class ChildRegister {
    private final Store store;
    private final Optional<Path> file;
    private final DrillSeat seat;
    private final SteerPractice steering;

    ChildRegister(Store store, Optional<Path> file, DrillSeat seat, SteerPractice steering) {
        this.store = store;
        this.file = file;
        this.seat = seat;
        this.steering = steering;
    }

    /** The children who practise here. */
    public List<Child> list() {
        return store.children();
    }

    /** All children, those put away too. */
    public List<KnownChild> all() {
        List<UUID> here = store.children().stream().map(Child::id).toList();
        return store.allChildren().stream()
                .map(c -> new KnownChild(c, !here.contains(c.id())))
                .toList();
    }

    /** The children who practise here whom a name means, or all of them without one. */
    public ChildChoice named(Optional<String> name) {
        return ChildChoice.of(list(), name);
    }

    /** The same among all children, those put away too. */
    public ChildChoice namedAmongAll(String name) {
        return ChildChoice.of(all().stream().map(KnownChild::child).toList(), Optional.of(name));
    }

    /**
     * Adds a child.
     *
     * @throws RecordsFailure also if nobody can be called that
     */
    public Child add(String name, Instant at) {
        String chosen = chosen(name, RecordsFailure.Task.ADD_CHILD);
        Child child = new Child(UUID.randomUUID(), chosen, at.truncatedTo(ChronoUnit.MILLIS));
        store.add(child);
        return child;
    }

    /**
     * Gives a child another name.
     *
     * @throws RecordsFailure also if nobody can be called that
     */
    public void rename(Child child, String name, Instant at) {
        chosen(name, RecordsFailure.Task.KEEP_CHANGE);
        steering.keep(child, List.of(new ParentAction.Choose(ParentAction.Choose.NAME, name)), at);
    }

    private String chosen(String name, RecordsFailure.Task task) {
        try {
            return ChildName.chosen(name);
        } catch (InvalidValue e) {
            throw new RecordsFailure(task, store.where(), e.problem(), e);
        }
    }

    /** Puts a child away, so that it is no longer asked who practises. Nothing is deleted. */
    public void putAway(Child child, Instant at) {
        steering.keep(child, List.of(new ParentAction.Choose(ParentAction.Choose.AWAY, "yes")), at);
    }

    /** Brings back a child who was put away. */
    public void bringBack(Child child, Instant at) {
        steering.keep(child, List.of(new ParentAction.Choose(ParentAction.Choose.AWAY, "no")), at);
    }

    /**
     * What came of removing a child.
     *
     * @param done false if the child practises in another window; then nothing was changed
     * @param backup the file of the backup that still holds the child; empty where backups are not kept
     */
    public record Removal(boolean done, Optional<Path> backup) {}

    /** Removes a child for good, with all answers, after a backup was made and checked. */
    public Removal remove(Child child, Instant at) {
        try {
            return seat.take(child) ? removed(child, at) : new Removal(false, Optional.empty());
        } finally {
            seat.leave();
        }
    }

    private Removal removed(Child child, Instant at) {
        Optional<Path> backup =
                file.map(f -> Backups.of(f).named("before-removal").file());
        store.remove(child.id(), at);
        return new Removal(true, backup);
    }
}
