// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All that a family's file says, as sets of records. {@link #union} is what merging two files means; the order in which
 * files are merged, and how often, makes no difference.
 *
 * @param children who was added and not removed
 * @param drills their drills
 * @param answers their answers
 * @param actions what their parents did
 * @param removals what was removed, named one by one
 */
public record RecordSet(
        Set<Child> children,
        Set<DrillSession> drills,
        Set<Answer> answers,
        Set<ActionRecord> actions,
        Set<Removal> removals) {
    public RecordSet {
        children = Set.copyOf(children);
        drills = Set.copyOf(drills);
        answers = Set.copyOf(answers);
        actions = Set.copyOf(actions);
        removals = Set.copyOf(removals);
    }

    /**
     * The records of both, without what the removals of either name. A removal takes only what it names: of a drill the
     * answers up to a position, so that later answers of the same child survive, and with them their drill and the child.
     *
     * @throws InvalidValue if one id means two things
     */
    public RecordSet union(RecordSet other) {
        return new RecordSet(
                        one(children, other.children, Child::id, Reason.FILES_DIFFER_CHILD),
                        one(drills, other.drills, DrillSession::id, Reason.FILES_DIFFER_DRILL),
                        one(answers, other.answers, Answer::id, Reason.FILES_DIFFER_ANSWER),
                        one(actions, other.actions, ActionRecord::id, Reason.FILES_DIFFER_ACTION),
                        Removal.farthest(Stream.concat(removals.stream(), other.removals.stream())))
                .withoutWhatIsRemoved();
    }

    private static <T> Set<T> one(Set<T> here, Set<T> there, Function<T, UUID> id, Reason differ) {
        Map<UUID, T> all = new HashMap<>();
        Stream.concat(here.stream(), there.stream()).forEach(record -> {
            T before = all.putIfAbsent(id.apply(record), record);
            if (before != null && !before.equals(record)) {
                throw new InvalidValue(differ, id.apply(record));
            }
        });
        return Set.copyOf(all.values());
    }

    private RecordSet withoutWhatIsRemoved() {
        Map<UUID, Removal> named = removals.stream().collect(Collectors.toMap(Removal::id, r -> r));
        Predicate<UUID> whole = child -> Removal.isWhole(named.get(child));
        Set<Answer> answersLeft = kept(
                answers,
                a -> !whole.test(a.child())
                        && !(named.containsKey(a.drill())
                                && a.position() <= named.get(a.drill()).answers()));
        Set<UUID> answered = answersLeft.stream().map(Answer::drill).collect(Collectors.toSet());
        Set<DrillSession> drillsLeft =
                kept(drills, d -> !whole.test(d.child()) && (!named.containsKey(d.id()) || answered.contains(d.id())));
        Set<ActionRecord> actionsLeft = kept(actions, a -> !whole.test(a.child()) && !named.containsKey(a.id()));
        Set<UUID> busy = new HashSet<>();
        drillsLeft.forEach(d -> busy.add(d.child()));
        actionsLeft.forEach(a -> busy.add(a.child()));
        Set<Child> childrenLeft =
                kept(children, c -> !whole.test(c.id()) && (!named.containsKey(c.id()) || busy.contains(c.id())));
        return new RecordSet(childrenLeft, drillsLeft, answersLeft, actionsLeft, removals);
    }

    private static <T> Set<T> kept(Set<T> all, Predicate<T> which) {
        return all.stream().filter(which).collect(Collectors.toSet());
    }
}
