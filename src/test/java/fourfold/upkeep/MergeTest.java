// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Guards against two computers that disagree after merging, and against a guess about who is who. */
class MergeTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final Child BO = Invented.child(2, "Bo");
    private static final Child ANA_TOO = Invented.child(3, "ana");
    private static final Instant NOW = Instant.parse("2027-01-01T12:00:00Z");
    private static final Merge.Said NOTHING = new Merge.Said(Set.of(), Map.of(), NOW, 60);

    private Path folder = Path.of("");
    private int files;

    @BeforeEach
    @BeforeTry
    void makeFolder() throws IOException {
        folder = Files.createTempDirectory("merge");
        MadeOnce.EMPTY.at(folder.resolve("template"));
    }

    @AfterEach
    @AfterTry
    void clear() throws IOException {
        try (var all = Files.list(folder)) {
            for (Path one : all.toList()) {
                Files.delete(one);
            }
        }
        Files.delete(folder);
    }

    private Path empty() {
        try {
            return Files.copy(folder.resolve("template"), folder.resolve(files++ + ".db"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** A file in which a computer kept part of one family's history; its clock is off by some hours. */
    private Path part(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Path file = empty();
        try (Store store = Store.open(file)) {
            List<Child> children = new ArrayList<>(List.of(ANA, BO));
            children.removeIf(c -> random.nextInt(5) == 0);
            children.forEach(store::add);
            for (Child child : children) {
                for (int number = 0; number < 6; number++) {
                    if (random.nextBoolean()) {
                        drill(store, random, child, number);
                    }
                    int which = random.nextInt(12);
                    ActionRecord action = Invented.action(child, number(child, which), action(child, which));
                    if (random.nextBoolean()) {
                        store.keep(action);
                    }
                }
            }
        }
        return file;
    }

    private static void drill(Store store, SplittableRandom random, Child child, int number) {
        DrillSession session = Invented.session(child, number + (child.equals(ANA) ? 0 : 50));
        DrillSession off = new DrillSession(
                session.id(),
                session.child(),
                session.startedAt().minus(Duration.ofHours(5L * (number % 3))),
                number % 2 * 60,
                session.planned(),
                session.seed());
        store.begin(off);
        for (int position = 1; position <= 6; position++) {
            if (random.nextInt(3) > 0) {
                store.keep(Invented.answer(off, position));
            }
        }
    }

    /** The same action for the same number, so that one action is the same action on both computers. */
    private static ParentAction action(Child child, int which) {
        return switch (which % 4) {
            case 0 -> new ParentAction.Focus(Family.of(6, 7));
            case 1 -> new ParentAction.Choose("name", child.name() + " " + which);
            case 2 ->
                new ParentAction.Undo(
                        Invented.action(child, number(child, which - 1), new ParentAction.Hold(Family.of(2, 2)))
                                .id());
            default -> new ParentAction.Choose("minutes", Integer.toString(5 + which % 5));
        };
    }

    private static int number(Child child, int which) {
        return which + (child.equals(ANA) ? 100 : 200);
    }

    /** All that a file says, whatever the order of its rows. */
    private static Set<Object> content(Path file) {
        Set<Object> all = new java.util.HashSet<>();
        try (Store store = Store.open(file)) {
            for (Child child : store.allChildren()) {
                all.add(child);
                all.addAll(store.sessions(child.id()));
                all.addAll(store.answers(child.id()));
                all.addAll(store.actions(child.id()));
            }
        }
        return all;
    }

    private Path merged(Path one, Path other) {
        return merged(one, other, NOTHING);
    }

    private Path merged(Path one, Path other, Merge.Said said) {
        try {
            Path result = Files.copy(one, folder.resolve(files++ + ".db"));
            try (Store store = Store.open(result)) {
                Merge.of(store, other, said);
            }
            return result;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Property(tries = 5)
    void mergingIsTheUnionInWhateverOrderAndHoweverOften(@ForAll long seed) {
        Path a = part(seed);
        Path b = part(seed + 1);
        Path c = part(seed + 2);
        Path ab = merged(a, b);
        assertEquals(content(ab), content(merged(b, a)));
        assertEquals(content(merged(ab, c)), content(merged(a, merged(b, c))));
        assertEquals(content(a), content(merged(a, a)));
        assertEquals(content(ab), content(merged(ab, b)));
        assertEquals(List.of(), foreign(ab));
    }

    /** What verify finds but for answers that neither computer had. */
    private static List<String> foreign(Path file) {
        return InEnglish.problems(Verification.of(file)).stream()
                .filter(f -> !f.contains("has no answer at position"))
                .toList();
    }

    @Test
    void aPreviewTellsWhatWouldComeAndChangesNothing() throws IOException {
        Path a = part(5);
        Path b = part(6);
        byte[] before = Files.readAllBytes(a);
        byte[] other = Files.readAllBytes(b);
        Merge told;
        try (Store store = Store.open(a)) {
            told = Merge.preview(store, b, NOTHING);
        }
        assertArrayEquals(before, Files.readAllBytes(a));
        assertArrayEquals(other, Files.readAllBytes(b), "the other file was written to");
        try (Store store = Store.open(a)) {
            assertEquals(told, Merge.of(store, b, NOTHING));
            assertEquals(new Merge(RowCounts.NONE, List.of(), List.of(), List.of()), Merge.of(store, b, NOTHING));
        }
        assertTrue(told.came().of(RowCounts.Kind.ANSWER) > 0);
    }

    private Path with(Child child, int number) {
        Path file = empty();
        try (Store store = Store.open(file)) {
            store.add(child);
            DrillSession session = Invented.session(child, number);
            store.begin(session);
            store.keep(Invented.answer(session, 1));
        }
        return file;
    }

    @Test
    void oneNameOnTwoComputersIsAskedAndNeverGuessed() throws IOException {
        Path here = with(ANA, 1);
        Path there = with(ANA_TOO, 2);
        byte[] before = Files.readAllBytes(here);
        try (Store store = Store.open(here)) {
            assertEquals(
                    List.of(new Merge.Clash("Ana", ANA, ANA_TOO)),
                    Merge.preview(store, there, NOTHING).unsettled());
            String refused = InEnglish.failure(() -> Merge.of(store, there, NOTHING));
            assertTrue(refused.contains("both have a child called \"Ana\"; say whether they are one child"), refused);
        }
        assertArrayEquals(before, Files.readAllBytes(here));
    }

    @Test
    void saidToBeTwoChildrenTheyAreTwoAndOneHasANewName() {
        Path both = merged(with(ANA, 1), with(ANA_TOO, 2), new Merge.Said(Set.of(), Map.of("ANA", "Anna"), NOW, 60));
        try (Store store = Store.open(both)) {
            assertEquals(
                    List.of("Ana", "Anna"),
                    store.children().stream().map(Child::name).toList());
            assertEquals(1, store.answers(ANA.id()).size());
            assertEquals(1, store.answers(ANA_TOO.id()).size());
        }
    }

    @Test
    void saidToBeOneChildTheyAreOneOnBothComputersAndMayBeMergedAgain() {
        Merge.Said same = new Merge.Said(Set.of("Ana"), Map.of(), NOW, 60);
        Path here = with(ANA, 1);
        Path there = with(ANA_TOO, 2);
        Path one = merged(here, there, same);
        assertEquals(content(one), content(merged(there, here, same)));
        assertEquals(content(one), content(merged(one, there)));
        assertEquals(content(one), content(merged(there, one)), "what was said goes along with the file");
        try (Store store = Store.open(one)) {
            assertEquals(List.of(ANA), store.children());
            List<Answer> answers = store.answers(ANA.id());
            assertEquals(2, answers.size());
            assertTrue(answers.stream().allMatch(a -> a.child().equals(ANA.id())));
            DrillSession more = Invented.session(ANA, 9);
            store.begin(more);
            store.keep(Invented.answer(more, 1));
            assertEquals(3, store.answers(ANA.id()).size());
            ActionRecord joined = store.actions(ANA.id()).get(0);
            store.keep(new ActionRecord(Invented.id(77), ANA.id(), NOW, 0, new ParentAction.Choose("name", "Mia")));
            store.keep(new ActionRecord(Invented.id(78), ANA.id(), NOW, 0, new ParentAction.Undo(joined.id())));
            assertEquals(
                    List.of("Mia", "ana"),
                    store.children().stream().map(Child::name).toList(),
                    "and can be taken back");
        }
    }

    @Test
    void aRemovalGoesAlongInBothDirectionsAndTakesNoAnswerThatItDoesNotName() {
        Path here = with(ANA, 1);
        Path there = with(ANA, 1);
        try (Store store = Store.open(here)) {
            store.remove(ANA.id(), NOW);
            Merge merge = Merge.of(store, there, NOTHING);
            assertEquals(List.of("Ana"), merge.leftOut());
            assertEquals(RowCounts.NONE, merge.came());
            assertEquals(List.of(), store.allChildren());
        }
        try (Store store = Store.open(there)) {
            Merge merge = Merge.of(store, here, NOTHING);
            assertEquals(List.of("Ana"), merge.removed());
            assertEquals(List.of(), store.allChildren(), "removed there, and she stayed here");
        }
        Path later = with(ANA, 1);
        try (Store store = Store.open(later)) {
            DrillSession session = Invented.session(ANA, 2);
            store.begin(session);
            store.keep(Invented.answer(session, 1));
            assertEquals(List.of(), Merge.of(store, here, NOTHING).removed());
            assertEquals(List.of(Invented.answer(session, 1)), store.answers(ANA.id()), "a later answer was taken too");
        }
        assertEquals(content(merged(here, later)), content(merged(later, here)));
    }

    @Test
    void aRemovalIsTakenBackWhereACopyRemainsAndHoldsNoLongerThanThat() throws IOException {
        Path here = with(ANA, 1);
        try (Store store = Store.open(here)) {
            store.keep(Invented.action(ANA, 1, new ParentAction.Choose("minutes", "7")));
            store.keep(Invented.action(ANA, 2, new ParentAction.Undo(Invented.id(2_000_001))));
        }
        Path copy = Files.copy(here, folder.resolve("copy.db"));
        Merge.Said back = new Merge.Said(Set.of(), Map.of(), Set.of("ana"), NOW, 60);
        Path removed = empty();
        for (int time = 1; time <= 2; time++) {
            try (Store store = Store.open(here)) {
                store.remove(store.children().get(0).id(), NOW);
                assertEquals(List.of("Ana"), Merge.of(store, copy, NOTHING).leftOut());
                assertEquals(List.of(), store.allChildren());
                if (time == 1) {
                    Merge.of(store, copy, back);
                    Child ana = store.children().get(0);
                    assertEquals("Ana", ana.name());
                    assertEquals(1, store.answers(ana.id()).size());
                    assertEquals(List.of(), fourfold.log.ActionRecord.inForce(store.actions(ana.id())));
                }
            }
            removed = merged(removed, here);
        }
        Path both = merged(removed, copy, back);
        assertEquals(content(both), content(merged(here, copy, back)), "two computers bring back one child");
        assertEquals(content(both), content(merged(both, here)), "the removal takes the child again");
        assertEquals(List.of(), Verification.of(both));
    }

    @Test
    void whatARemovalNamesIsGoneFromTheFilesBytesAlsoOnTheOtherComputer() throws IOException {
        Path here = with(ANA, 1);
        Path there = with(ANA, 1);
        try (Store store = Store.open(here)) {
            store.remove(ANA.id(), NOW);
        }
        try (Store store = Store.open(there)) {
            Merge.of(store, here, NOTHING);
        }
        for (Path file : List.of(here, there)) {
            String bytes = new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
            assertFalse(bytes.contains("Ana"), file + " still holds the name");
        }
    }

    @Test
    void aRowThatIsTheSameChildElsewhereKeepsItsOwnAnswers() {
        Merge.Said same = new Merge.Said(Set.of("Ana"), Map.of(), NOW, 60);
        Path here = with(ANA, 1);
        Path there = merged(with(ANA_TOO, 2), here, same);
        try (Store store = Store.open(here)) {
            store.remove(ANA.id(), NOW);
            Merge.of(store, there, NOTHING);
            assertEquals(1, store.children().size());
            assertEquals(
                    List.of(Invented.session(ANA_TOO, 2).id()),
                    store.answers(store.children().get(0).id()).stream()
                            .map(Answer::drill)
                            .toList());
        }
    }

    @Test
    void aChildRenamedOnOneSideIsStillTheSameChild() {
        Path here = with(ANA, 1);
        Path there = with(ANA, 2);
        try (Store store = Store.open(there)) {
            store.keep(new ActionRecord(Invented.id(77), ANA.id(), NOW, 0, new ParentAction.Choose("name", "Mia")));
        }
        try (Store store = Store.open(merged(here, there))) {
            assertEquals(
                    List.of("Mia"), store.children().stream().map(Child::name).toList());
            assertEquals(2, store.answers(ANA.id()).size());
        }
    }

    @Test
    void oneIdThatMeansTwoThingsIsRefused() {
        Path here = with(ANA, 1);
        Path there = empty();
        try (Store store = Store.open(there)) {
            store.add(ANA);
            DrillSession session = Invented.session(ANA, 1);
            store.begin(session);
            store.keep(Invented.typing(Invented.answer(session, 1), "9"));
        }
        try (Store store = Store.open(here)) {
            String refused = InEnglish.failure(() -> Merge.of(store, there, NOTHING));
            assertTrue(refused.contains("differ in what they say of the answer in the drill"), refused);
        }
    }
}
