// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.InvalidValue;
import fourfold.log.ParentAction;
import fourfold.log.RecordSet;
import fourfold.log.Removal;
import fourfold.store.Invented;
import fourfold.store.RecordFile;
import fourfold.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against two computers that disagree after merging because a child was removed on one of them: in whatever order,
 * however often, with removals, one nickname for two children, renames, resets, undone actions and clocks apart. The pure
 * union is the law; the files are held to it.
 */
class UnionTest {
    private static final RecordSet NOTHING = new RecordSet(Set.of(), Set.of(), Set.of(), Set.of(), Set.of());
    private static final int TRIPLES = Integer.getInteger("fourfold.triples", 10_000);

    /** Files take a tenth of a second each; the long form is {@code -Dfourfold.fileTriples=200}. */
    private static final int ON_FILES = Integer.getInteger("fourfold.fileTriples", 50);

    /** Two of them have one name. */
    private static final List<Child> CHILDREN =
            List.of(Invented.child(1, "Ana"), Invented.child(2, "Bo"), Invented.child(3, "ana"));

    @TempDir
    private Path folder;

    /** What one computer may hold of a history that all share: some drills, some answers of each, and what was removed. */
    private static RecordSet part(SplittableRandom random) {
        Set<Child> children = new HashSet<>();
        Set<DrillSession> drills = new HashSet<>();
        Set<Answer> answers = new HashSet<>();
        Set<ActionRecord> actions = new HashSet<>();
        for (Child child : CHILDREN) {
            if (random.nextInt(4) == 0) {
                continue;
            }
            children.add(child);
            for (int number = 0; number < 3; number++) {
                if (random.nextBoolean()) {
                    DrillSession drill = drill(child, number);
                    drills.add(drill);
                    int given = random.nextInt(4);
                    for (int position = 1; position <= given; position++) {
                        answers.add(Invented.answer(drill, position));
                    }
                }
                if (random.nextInt(3) == 0) {
                    actions.add(action(child, number));
                }
            }
        }
        return new RecordSet(children, drills, answers, actions, Set.of());
    }

    /** The clocks of the computers are hours apart. */
    private static DrillSession drill(Child child, int number) {
        DrillSession drill = Invented.session(child, number + 10 * child.id().getLeastSignificantBits());
        return new DrillSession(
                drill.id(),
                child.id(),
                drill.startedAt().minus(Duration.ofHours(7L * (number % 2))),
                0,
                drill.planned(),
                1);
    }

    private static ActionRecord action(Child child, int number) {
        long id = 100 * child.id().getLeastSignificantBits() + number;
        ParentAction action = switch (number) {
            case 0 -> new ParentAction.Choose(ParentAction.Choose.NAME, child.name() + "x");
            case 1 -> new ParentAction.Reset(Family.of(6, 7));
            default ->
                new ParentAction.Undo(Invented.action(child, id - 1, new ParentAction.Hold(Family.of(1, 1)))
                        .id());
        };
        return Invented.action(child, id, action);
    }

    /** The same after a parent removed the child there. */
    private static RecordSet removing(Child child, RecordSet part) {
        if (!part.children().contains(child)) {
            return part;
        }
        Set<Removal> removals = new HashSet<>(part.removals());
        removals.add(new Removal(child.id(), child.id(), Removal.Kind.CHILD, 0));
        for (DrillSession drill : part.drills()) {
            if (drill.child().equals(child.id())) {
                int last = part.answers().stream()
                        .filter(a -> a.drill().equals(drill.id()))
                        .mapToInt(Answer::position)
                        .max()
                        .orElse(0);
                removals.add(new Removal(drill.id(), child.id(), Removal.Kind.DRILL, last));
            }
        }
        for (ActionRecord action : part.actions()) {
            if (action.child().equals(child.id())) {
                removals.add(new Removal(action.id(), child.id(), Removal.Kind.ACTION, 0));
            }
        }
        return new RecordSet(part.children(), part.drills(), part.answers(), part.actions(), removals).union(NOTHING);
    }

    private record Triple(RecordSet a, RecordSet b, RecordSet c) {}

    /** Each is a part; in most something was removed, also after it had been merged. */
    private static Triple triple(SplittableRandom random) {
        RecordSet a = part(random);
        RecordSet b = part(random);
        RecordSet c = part(random);
        if (random.nextInt(4) > 0) {
            a = removing(CHILDREN.get(random.nextInt(3)), a);
        }
        if (random.nextInt(4) == 0) {
            b = removing(CHILDREN.get(random.nextInt(3)), b.union(a));
        }
        if (random.nextInt(8) == 0) {
            UUID whole = CHILDREN.get(random.nextInt(3)).id();
            c = c.union(new RecordSet(
                    Set.of(),
                    Set.of(),
                    Set.of(),
                    Set.of(),
                    Set.of(new Removal(whole, whole, Removal.Kind.WHOLE_CHILD, 0))));
        }
        return new Triple(a, b, c);
    }

    @Test
    void theUnionIsTheSameInWhateverOrderAndHoweverOften() {
        SplittableRandom random = new SplittableRandom(19);
        int removed = 0;
        int survived = 0;
        for (int i = 0; i < TRIPLES; i++) {
            Triple t = triple(random);
            RecordSet all = t.a.union(t.b).union(t.c);
            assertEquals(all, t.a.union(t.b.union(t.c)), "triple " + i);
            assertEquals(all, t.c.union(t.b).union(t.a), "triple " + i);
            assertEquals(all, all.union(t.b), "triple " + i);
            assertEquals(t.a, t.a.union(t.a), "triple " + i);
            assertEquals(t.a, t.a.union(NOTHING), "triple " + i);
            assertTrue(all.drills().stream()
                    .allMatch(d -> all.children().stream().anyMatch(k -> k.id().equals(d.child()))));
            for (RecordSet part : List.of(t.a, t.b, t.c)) {
                assertTrue(
                        part.answers().stream().allMatch(x -> all.answers().contains(x) || isNamed(x, all.removals())),
                        "an answer that no removal names was lost in triple " + i);
            }
            removed += all.removals().isEmpty() ? 0 : 1;
            survived += all.children().stream()
                            .anyMatch(k -> all.removals().stream().anyMatch(r -> r.id().equals(k.id())))
                    ? 1
                    : 0;
        }
        assertTrue(
                removed > TRIPLES / 2 && survived > TRIPLES / 10,
                removed + " with removals, " + survived + " survived");
    }

    private static boolean isNamed(Answer answer, Set<Removal> removals) {
        return removals.stream()
                .anyMatch(r -> (r.id().equals(answer.drill()) && answer.position() <= r.answers())
                        || (r.kind() == Removal.Kind.WHOLE_CHILD && r.id().equals(answer.child())));
    }

    @Test
    void oneIdThatMeansTwoThingsHasNoUnion() {
        Child ana = CHILDREN.get(0);
        RecordSet one = new RecordSet(Set.of(ana), Set.of(), Set.of(), Set.of(), Set.of());
        RecordSet other =
                new RecordSet(Set.of(new Child(ana.id(), "Eva", ana.since())), Set.of(), Set.of(), Set.of(), Set.of());
        assertThrows(InvalidValue.class, () -> one.union(other));
    }

    @Test
    void filesAreMergedAsTheUnionSays() throws IOException {
        Path template = folder.resolve("template.db");
        Store.open(template).close();
        SplittableRandom random = new SplittableRandom(7);
        Merge.Said same = new Merge.Said(Set.of("Ana", "Anax"), Map.of(), Instant.EPOCH, 0);
        for (int i = 0; i < ON_FILES; i++) {
            Triple t = triple(random);
            Path into = written(template, "into.db", t.a);
            Path other = written(template, "other.db", t.b);
            // One name of two children is for a parent to say; here they always say that it is one child.
            try (Store store = Store.open(into)) {
                Merge.of(store, other, same);
                assertEquals(without(t.a.union(t.b)), without(RecordFile.read(store)), "pair " + i);
            }
            if (i % 10 == 0) {
                Path third = written(template, "third.db", t.c);
                try (Store store = Store.open(into)) {
                    Merge.of(store, third, same);
                    RecordSet both = RecordFile.read(store);
                    assertEquals(without(t.a.union(t.b).union(t.c)), without(both), "triple " + i);
                }
                try (Store store = Store.open(third)) {
                    Merge.of(store, other, same);
                    Merge.of(store, written(template, "again.db", t.a), same);
                    assertEquals(
                            without(t.a.union(t.b).union(t.c)), without(RecordFile.read(store)), "triple back " + i);
                }
            }
        }
    }

    /** Without what a parent said of one name, which is an action more. */
    private static RecordSet without(RecordSet all) {
        Set<ActionRecord> actions = new HashSet<>(all.actions());
        actions.removeIf(
                a -> a.action() instanceof ParentAction.Choose c && c.setting().equals(ParentAction.Choose.SAME));
        return new RecordSet(all.children(), all.drills(), all.answers(), actions, all.removals());
    }

    private Path written(Path template, String name, RecordSet records) throws IOException {
        Path file = folder.resolve(name);
        Files.deleteIfExists(file);
        Files.copy(template, file);
        try (Store store = Store.open(file)) {
            RecordFile.write(store, records);
        }
        return file;
    }
}
