// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.ChildName;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.words.InEnglish;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What must hold on every database: nothing lost, nothing changed, nothing kept twice, everything in order. */
abstract class StoreLaws {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final Child BO = Invented.child(2, "Bo");

    /** Opened before each test. */
    @SuppressWarnings("NullAway.Init")
    private Store store;

    /** An empty store of the kind under test. */
    abstract Store fresh() throws Exception;

    @BeforeEach
    void openFresh() throws Exception {
        store = fresh();
        store.add(ANA);
        store.add(BO);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void answersReadBackEqualAndInOrderWhateverOrderTheyWereKeptIn() {
        List<Answer> all = new ArrayList<>();
        List<DrillSession> sessions =
                IntStream.range(0, 8).mapToObj(n -> Invented.session(ANA, n)).toList();
        for (DrillSession session : sessions) {
            IntStream.rangeClosed(1, 25).forEach(p -> all.add(Invented.answer(session, p)));
        }
        List<DrillSession> backwards = new ArrayList<>(sessions);
        Collections.reverse(backwards);
        backwards.forEach(store::begin);
        List<Answer> shuffled = new ArrayList<>(all);
        Collections.shuffle(shuffled, new Random(7));
        shuffled.subList(0, 20).forEach(store::keep);
        store.keepAll(List.of(), shuffled.subList(20, shuffled.size()));

        assertEquals(all, store.answers(ANA.id()));
        assertEquals(sessions, store.sessions(ANA.id()));
        assertEquals(List.of(), store.answers(BO.id()), "another child's answers are not mixed in");
    }

    @Test
    void drillsThatBeganTogetherAreReadOneAfterTheOther() {
        DrillSession first = Invented.session(ANA, 1);
        DrillSession second =
                new DrillSession(Invented.id(5), ANA.id(), first.startedAt(), 0, Duration.ofMinutes(5), Long.MIN_VALUE);
        List<Answer> all = new ArrayList<>();
        for (DrillSession session : List.of(second, first)) {
            store.begin(session);
            IntStream.rangeClosed(1, 3).forEach(p -> all.add(Invented.answer(session, p)));
        }
        store.keepAll(List.of(), all);
        assertEquals(List.of(second, first), store.sessions(ANA.id()), "ordered by id");
        assertEquals(all, store.answers(ANA.id()));
    }

    @Test
    void keepingTheSameThingTwiceChangesNothing() {
        DrillSession session = Invented.session(ANA, 1);
        Answer answer = Invented.answer(session, 1);
        ActionRecord action = Invented.action(ANA, 1, new ParentAction.Focus(Family.of(6, 7)));
        for (int i = 0; i < 2; i++) {
            store.add(ANA);
            store.begin(session);
            store.keep(answer);
            store.keepAll(List.of(session, session), List.of(answer, answer));
            store.keep(action);
        }
        assertEquals(List.of(ANA, BO), store.children());
        assertEquals(List.of(session), store.sessions(ANA.id()));
        assertEquals(List.of(answer), store.answers(ANA.id()));
        assertEquals(List.of(action), store.actions(ANA.id()));
    }

    @Test
    void timesAreKeptToTheMillisecondAndStillCountAsTheSame() {
        DrillSession whole = Invented.session(ANA, 1);
        DrillSession finer = new DrillSession(
                whole.id(),
                ANA.id(),
                whole.startedAt().plusNanos(999_999),
                60,
                whole.planned().plusMillis(999),
                whole.seed());
        store.begin(finer);
        store.begin(whole);
        assertEquals(List.of(whole), store.sessions(ANA.id()));

        Answer answer = Invented.answer(whole, 3);
        store.keep(answer);
        store.keep(new Answer(
                new Answer.Place(answer.child(), answer.drill(), 3),
                new Moment(answer.askedAt().plusNanos(1), answer.zoneOffsetMinutes()),
                answer.purpose(),
                answer.prompt(),
                new Answer.Typing(
                        answer.typed(),
                        new Answer.Times(
                                answer.firstKey().map(t -> t.plusNanos(999_999)),
                                answer.whole().map(t -> t.plusNanos(1))),
                        answer.erasures()),
                answer.surface()));
        assertEquals(List.of(answer), store.answers(ANA.id()));
    }

    @Test
    void anotherAnswerAtTheSamePlaceIsRefusedAndTheFirstStays() {
        DrillSession session = Invented.session(ANA, 1);
        store.begin(session);
        Answer first = Invented.typing(Invented.answer(session, 1), "12");
        store.keep(first);
        assertRefused("another answer is kept at position 1", () -> store.keep(Invented.typing(first, "13")));
        assertRefused("another answer is kept at position 1", () -> store.keep(Invented.typing(first, "012")));
        assertEquals(List.of(first), store.answers(ANA.id()));
    }

    @Test
    void anotherDrillOrActUnderTheSameIdIsRefused() {
        DrillSession session = Invented.session(ANA, 1);
        store.begin(session);
        assertRefused(
                "another drill has the id",
                () -> store.begin(new DrillSession(
                        session.id(), BO.id(), session.startedAt(), 60, session.planned(), session.seed())));
        ActionRecord action = Invented.action(ANA, 1, new ParentAction.Hold(Family.of(2, 3)));
        store.keep(action);
        assertRefused(
                "another action has the id",
                () -> store.keep(new ActionRecord(
                        action.id(), ANA.id(), action.at(), 0, new ParentAction.Focus(Family.of(2, 3)))));
        assertEquals(List.of(session), store.sessions(ANA.id()));
        assertEquals(List.of(action), store.actions(ANA.id()));
    }

    @Test
    void whatBelongsToNobodyIsRefused() {
        Child nobody = Invented.child(9, "Nobody");
        DrillSession session = Invented.session(ANA, 1);
        assertRefused("there is no drill", () -> store.keep(Invented.answer(session, 1)));
        assertRefused("there is no child", () -> store.begin(Invented.session(nobody, 1)));
        assertRefused("there is no child", () -> store.keep(Invented.action(nobody, 1, new ParentAction.OpenTable(3))));
        store.begin(session);
        DrillSession stolen =
                new DrillSession(session.id(), BO.id(), session.startedAt(), 60, session.planned(), session.seed());
        assertRefused("is not a drill of the child", () -> store.keep(Invented.answer(stolen, 1)));
        assertEquals(List.of(), store.answers(ANA.id()));
        assertEquals(List.of(), store.answers(nobody.id()));
        assertEquals(List.of(), store.sessions(nobody.id()));
        assertEquals(List.of(), store.actions(nobody.id()));
    }

    @Test
    void aBatchIsKeptWholeOrNotAtAll() {
        DrillSession good = Invented.session(ANA, 1);
        DrillSession unknown = Invented.session(ANA, 2);
        List<Answer> answers = List.of(Invented.answer(good, 1), Invented.answer(good, 2), Invented.answer(unknown, 1));
        assertRefused("there is no drill", () -> store.keepAll(List.of(good), answers));
        assertEquals(List.of(), store.sessions(ANA.id()));
        assertEquals(List.of(), store.answers(ANA.id()));

        store.keepAll(List.of(good, unknown), answers);
        assertEquals(answers, store.answers(ANA.id()), "the store works on after a refusal");
    }

    @Test
    void actionsComeInTheOrderOfTheirTimes() {
        List<ParentAction> actions = List.of(
                new ParentAction.Focus(Family.of(6, 7)),
                new ParentAction.Hold(Family.of(1, 10)),
                new ParentAction.Release(Family.of(9, 9)),
                new ParentAction.Reset(Family.of(3, 8)),
                new ParentAction.OpenTable(10),
                new ParentAction.CloseTable(1),
                new ParentAction.Order(Families.EASY_FIRST),
                new ParentAction.Choose("minutes", "8"),
                new ParentAction.Choose("note", "ü = ½ × 1; drop table act --"),
                new ParentAction.Undo(Invented.id(2_000_000)));
        List<ActionRecord> kept = IntStream.range(0, actions.size())
                .mapToObj(n -> Invented.action(ANA, n, actions.get(n)))
                .toList();
        List<ActionRecord> backwards = new ArrayList<>(kept);
        Collections.reverse(backwards);
        backwards.forEach(store::keep);
        assertEquals(kept, store.actions(ANA.id()));
        assertEquals(List.of(), store.actions(BO.id()));
    }

    @Test
    void aChildIsCalledByTheLastNameThatWasNotTakenBack() {
        store.keep(Invented.action(ANA, 1, new ParentAction.Choose("name", "Anna")));
        ActionRecord second = Invented.action(ANA, 2, new ParentAction.Choose("name", "Änne"));
        store.keep(second);
        assertEquals(List.of("Änne", "Bo"), names(store.children()));
        ActionRecord undo = Invented.action(ANA, 3, new ParentAction.Undo(second.id()));
        store.keep(undo);
        assertEquals(List.of("Anna", "Bo"), names(store.children()));
        store.keep(Invented.action(ANA, 4, new ParentAction.Undo(undo.id())));
        assertEquals(List.of("Änne", "Bo"), names(store.children()));
        assertEquals(ANA.since(), store.children().get(0).since());
    }

    @Test
    void aChildThatWasPutAwayIsKeptAndCanComeBack() {
        store.keep(Invented.action(ANA, 1, new ParentAction.Choose("archived", "yes")));
        assertEquals(List.of(BO), store.children());
        assertEquals(List.of(ANA, BO), store.allChildren());
        assertRefused("put away", () -> store.add(Invented.child(3, "ANA")));
        store.keep(Invented.action(ANA, 2, new ParentAction.Choose("archived", "no")));
        assertEquals(List.of(ANA, BO), store.children());
    }

    @Test
    void twoChildrenNeverShareAName() {
        assertRefused("there is already a child called \"Ana\"", () -> store.add(Invented.child(3, "aNA")));
        ActionRecord renamed = Invented.action(ANA, 1, new ParentAction.Choose("name", "Zoë"));
        store.keep(renamed);
        assertRefused("\"Zoë\"", () -> store.add(Invented.child(3, "ZOE\u0308")));
        store.add(Invented.child(4, "Ana"));
        assertRefused("\"Ana\"", () -> store.keep(Invented.action(ANA, 2, new ParentAction.Undo(renamed.id()))));
        assertRefused("\"Zoë\"", () -> store.keep(Invented.action(BO, 3, new ParentAction.Choose("name", "zoë"))));
        assertRefused(
                "1 to 40 characters", () -> store.keep(Invented.action(BO, 4, new ParentAction.Choose("name", " "))));
        assertEquals(List.of("Zoë", "Bo", "Ana"), names(store.allChildren()));
        assertEquals(List.of(renamed), store.actions(ANA.id()));
    }

    @Test
    void aNameOfFortyCharactersOfAnyScriptIsKept() {
        Child longest = Invented.child(5, "\uD83E\uDD8A".repeat(ChildName.LONGEST));
        Child quoted = Invented.child(6, "O'Hara \"Ω\" %_'; --");
        store.add(longest);
        store.add(quoted);
        assertEquals(List.of(ANA, BO, longest, quoted), store.children());
    }

    @Test
    void aResponseTimeTooLongForARowIsRefusedAndNotCutShort() {
        DrillSession session = Invented.session(ANA, 1);
        store.begin(session);
        Answer answer = Invented.answer(session, 1);
        Answer endless = new Answer(
                new Answer.Place(answer.child(), answer.drill(), 1),
                new Moment(answer.askedAt(), 0),
                answer.purpose(),
                answer.prompt(),
                new Answer.Typing(
                        "1", new Answer.Times(answer.firstKey(), java.util.Optional.of(Duration.ofDays(30))), 0),
                answer.surface());
        assertRefused("longer than a row can hold", () -> store.keep(endless));
        assertEquals(List.of(), store.answers(ANA.id()));
    }

    private static List<String> names(List<Child> children) {
        return children.stream().map(Child::name).toList();
    }

    private static void assertRefused(String reason, org.junit.jupiter.api.function.Executable attempt) {
        String message = InEnglish.failure(attempt);
        assertTrue(message.contains(reason), message);
        assertTrue(message.startsWith("could not "), message);
        assertEquals(1, message.lines().count(), "one line: " + message);
    }
}
