// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.DrillSession;
import fourfold.log.InvalidValue;
import fourfold.log.Reason;
import fourfold.records.AnswersCsv;
import fourfold.store.Store;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;

/** Answers read from a file and checked against those the home has, not yet kept. */
public final class ImportedAnswers {
    /** The log does not say how long a drill was meant to last; this is the usual length. */
    private static final Duration PLANNED = Duration.ofMinutes(8);

    private final Store store;
    private final Instant now;
    private final Map<String, Child> children = new HashMap<>();
    private final List<Child> newChildren = new ArrayList<>();
    private final Map<UUID, UUID> knownDrills = new HashMap<>();
    private final Map<UUID, Answer> kept = new HashMap<>();
    private final Map<UUID, DrillSession> newDrills = new LinkedHashMap<>();
    private final Map<UUID, Answer> fresh = new LinkedHashMap<>();
    private final Set<UUID> removed;
    private int known;

    private ImportedAnswers(Store store, Instant now) {
        this.store = store;
        this.now = now.truncatedTo(ChronoUnit.MILLIS);
        removed = store.removedIds();
        for (Child child : store.allChildren()) {
            children.put(ChildName.folded(child.name()), child);
            store.sessions(child.id()).forEach(s -> knownDrills.put(s.id(), child.id()));
            store.readAnswers(child.id(), a -> kept.put(a.id(), a));
        }
    }

    /**
     * Reads a log that was exported.
     *
     * @throws InvalidValue with the line number and what is wrong in it
     */
    public static ImportedAnswers read(Store store, Reader csv, Instant now) {
        ImportedAnswers imported = new ImportedAnswers(store, now);
        AnswersCsv.read(csv, imported::child, imported::take);
        imported.checkOrder();
        return imported;
    }

    private UUID child(String name) {
        return children.computeIfAbsent(ChildName.folded(name), n -> newChild(name))
                .id();
    }

    /** Children appear in the order of the log, so that the next export has the same order. */
    private Child newChild(String name) {
        Child child = new Child(UUID.randomUUID(), ChildName.chosen(name), now.plusMillis(newChildren.size()));
        if (!child.name().equals(name)) {
            throw new InvalidValue(Reason.NAME_BLANKS);
        }
        newChildren.add(child);
        return child;
    }

    /** What a removal names would be removed again by the next merge: it comes in as a drill of its own. */
    private Answer anew(Answer answer) {
        if (!removed.contains(answer.drill())) {
            return answer;
        }
        UUID anew = UUID.nameUUIDFromBytes((answer.drill() + "-anew").getBytes(StandardCharsets.UTF_8));
        return answer.in(new Answer.Place(answer.child(), anew, answer.position()));
    }

    private void take(Answer written) {
        Answer answer = anew(written);
        UUID whose = knownDrills.get(answer.drill());
        if (whose == null) {
            DrillSession drill = newDrills.computeIfAbsent(
                    answer.drill(),
                    id -> new DrillSession(
                            id, answer.child(), answer.askedAt(), answer.zoneOffsetMinutes(), PLANNED, 0));
            whose = drill.child();
            if (answer.askedAt().isBefore(drill.startedAt())) {
                newDrills.put(
                        answer.drill(),
                        new DrillSession(drill.id(), whose, answer.askedAt(), answer.zoneOffsetMinutes(), PLANNED, 0));
            }
        }
        if (!whose.equals(answer.child())) {
            throw new InvalidValue(Reason.OTHER_CHILDS_DRILL, answer.drill());
        }
        Answer before = kept.getOrDefault(answer.id(), fresh.getOrDefault(answer.id(), answer));
        if (!before.equals(answer)) {
            throw new InvalidValue(Reason.OTHER_ANSWER_THERE, answer.position(), answer.drill());
        }
        if (kept.containsKey(answer.id())) {
            known++;
        } else {
            fresh.put(answer.id(), answer);
        }
    }

    /** A part of a drill would look like a drill that lost answers, for ever. */
    private void checkOrder() {
        Map<UUID, SortedMap<Integer, Answer>> drills = new HashMap<>();
        fresh.values().forEach(a -> drills.computeIfAbsent(a.drill(), d -> new TreeMap<>()));
        Stream.concat(kept.values().stream(), fresh.values().stream())
                .filter(a -> drills.containsKey(a.drill()))
                .forEach(a ->
                        drills.computeIfAbsent(a.drill(), d -> new TreeMap<>()).put(a.position(), a));
        drills.forEach((drill, answers) -> {
            Instant before = Instant.MIN;
            int expected = 1;
            for (Answer answer : answers.values()) {
                if (answer.position() != expected) {
                    throw new InvalidValue(Reason.PART_OF_DRILL, drill, expected);
                }
                if (answer.askedAt().isBefore(before)) {
                    throw new InvalidValue(Reason.ANSWER_EARLY, answer.position(), drill);
                }
                before = answer.askedAt();
                expected++;
            }
        });
    }

    /** How many answers are new. */
    public int fresh() {
        return fresh.size();
    }

    /** How many answers the home has already. */
    public int known() {
        return known;
    }

    /** How many drills are new. */
    public int drills() {
        return newDrills.size();
    }

    /** The children that the home does not have yet, in the order of the file. */
    public List<Child> newChildren() {
        return List.copyOf(newChildren);
    }

    /** Keeps all that is new, or nothing. */
    void keep() {
        store.takeIn(newChildren, List.copyOf(newDrills.values()), List.copyOf(fresh.values()));
    }
}
