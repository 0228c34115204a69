// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.AwayPractice;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.StringLength;

/** Guards against an action or a code that comes back from the file as something else. */
class ActionTextTest {
    private static final String SOME_ID = "00000000-0000-4000-8000-000000000001";

    @Property
    void everyActionComesBackAsItWas(@ForAll("actions") ParentAction action) {
        ActionText text = ActionText.of(action);
        assertEquals(action, text.action());
        assertTrue(text.detail().length() <= 400 && !text.detail().isEmpty());
    }

    @Property
    void anyTextOfASettingComesBackOrIsRefused(@ForAll @StringLength(max = 500) String chosen) {
        ParentAction action = new ParentAction.Choose("note", chosen);
        ActionText text;
        try {
            text = ActionText.of(action);
        } catch (Refusal refusal) {
            boolean control = chosen.codePoints()
                    .anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE);
            assertTrue(control || chosen.length() > 395, refusal.getMessage());
            return;
        }
        assertEquals(action, text.action());
    }

    @Property
    void wordsThatAreNoActionAreRefusedPlainly(
            @ForAll("kinds") String kind, @ForAll @StringLength(max = 20) String detail) {
        try {
            ParentAction action = new ActionText(kind, detail).action();
            assertEquals(kind, ActionText.of(action).kind());
        } catch (IllegalArgumentException | Refusal refused) {
            assertTrue(refused.getMessage() != null);
        }
    }

    @Example
    void theWordsInTheFileStayAsTheyAre() {
        // Files of years hold these words; a change here would make them unreadable.
        assertEquals(new ActionText("focus", "6x7"), ActionText.of(new ParentAction.Focus(Family.of(7, 6))));
        assertEquals(new ActionText("hold", "1x10"), ActionText.of(new ParentAction.Hold(Family.of(1, 10))));
        assertEquals(new ActionText("release", "9x9"), ActionText.of(new ParentAction.Release(Family.of(9, 9))));
        assertEquals(new ActionText("reset", "2x3"), ActionText.of(new ParentAction.Reset(Family.of(2, 3))));
        assertEquals(new ActionText("open", "10"), ActionText.of(new ParentAction.OpenTable(10)));
        assertEquals(new ActionText("close", "1"), ActionText.of(new ParentAction.CloseTable(1)));
        assertEquals(
                new ActionText("order", "2 1 5 10 3 4 6 7 8 9"),
                ActionText.of(new ParentAction.Order(Families.EASY_FIRST)));
        assertEquals(new ActionText("choose", "name=a=b"), ActionText.of(new ParentAction.Choose("name", "a=b")));
        assertEquals(
                new ActionText("calendar", "start=2026-09-07"),
                ActionText.of(new ParentAction.CalendarEntry("start", "2026-09-07")));
        assertEquals(new ActionText("taught", "7 divide"), ActionText.of(new ParentAction.Taught(7, Operation.DIVIDE)));
        assertEquals(
                new ActionText("away", "2026-11-02 cards"),
                ActionText.of(new ParentAction.Away(LocalDate.of(2026, 11, 2), AwayPractice.CARDS)));
        assertEquals(new ActionText("undo", SOME_ID), ActionText.of(new ParentAction.Undo(UUID.fromString(SOME_ID))));
    }

    @Example
    void aSettingWithoutAProperNameIsRefused() {
        for (String setting : List.of("", "a=b", "a b", "ü", "7")) {
            assertThrows(Refusal.class, () -> ActionText.of(new ParentAction.Choose(setting, "x")), setting);
        }
    }

    @Example
    void theNumbersInTheFileStayAsTheyAre() {
        // As the migration's comments say.
        assertEquals(List.of(0, 1, 2, 3, 4, 5, 6, 7), codes(Purpose.values(), Codes::of));
        Question product = Question.product(7, 8);
        Question quotient = new Question(Operation.DIVIDE, 56, 7);
        MissingFactor hidden = new MissingFactor(quotient);
        assertEquals(1, Codes.of(product, product));
        assertEquals(2, Codes.of(quotient, quotient));
        assertEquals(3, Codes.of(quotient, hidden));
        assertEquals(hidden, Codes.prompt(3, 56, 7));
        assertEquals(List.of(1, 2, 3, 4, 5), codes(Surface.values(), Codes::of));
        assertEquals(List.of(1, 2), codes(Answer.Pace.values(), Codes::of));
        for (Purpose purpose : Purpose.values()) {
            assertEquals(purpose, Codes.purpose(Codes.of(purpose)));
        }
        for (Surface surface : Surface.values()) {
            assertEquals(surface, Codes.surface(Codes.of(surface)));
        }
        for (Question question : Families.questions()) {
            assertEquals(question, Codes.prompt(Codes.of(question, question), question.left(), question.right()));
        }
        assertThrows(IllegalArgumentException.class, () -> Codes.prompt(2, 57, 7));
        assertThrows(IllegalArgumentException.class, () -> Codes.prompt(4, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> Codes.prompt(0, 0, 0));
    }

    @Provide
    Arbitrary<String> kinds() {
        return Arbitraries.of(
                "focus",
                "hold",
                "release",
                "reset",
                "open",
                "close",
                "order",
                "choose",
                "undo",
                "calendar",
                "taught",
                "away",
                "other");
    }

    @Provide
    Arbitrary<ParentAction> actions() {
        Arbitrary<Family> families = Arbitraries.of(Families.all());
        Arbitrary<Integer> tables = Arbitraries.integers().between(1, 10);
        Arbitrary<String> names = Arbitraries.strings().alpha().ofMinLength(1).ofMaxLength(20);
        Arbitrary<String> texts =
                Arbitraries.strings().withChars("=xXÄß数 %_'\"\\;-").numeric().ofMaxLength(100);
        return Arbitraries.oneOf(
                families.map(ParentAction.Focus::new),
                families.map(ParentAction.Hold::new),
                families.map(ParentAction.Release::new),
                families.map(ParentAction.Reset::new),
                tables.map(ParentAction.OpenTable::new),
                tables.map(ParentAction.CloseTable::new),
                Arbitraries.longs().map(ActionTextTest::order),
                names.flatMap(name -> texts.map(text -> new ParentAction.Choose(name, text))),
                names.flatMap(name -> texts.map(text -> new ParentAction.CalendarEntry(name, text))),
                tables.map(table -> new ParentAction.Taught(table, Operation.DIVIDE)),
                Arbitraries.integers()
                        .between(0, 100_000)
                        .map(day -> new ParentAction.Away(LocalDate.ofEpochDay(day), AwayPractice.PAGE)),
                Arbitraries.longs().map(n -> new ParentAction.Undo(new UUID(n, ~n))));
    }

    private static ParentAction order(long seed) {
        List<Integer> tables = new ArrayList<>(Families.USUAL_ORDER);
        Collections.shuffle(tables, new Random(seed));
        return new ParentAction.Order(tables);
    }

    private static <T> List<Integer> codes(T[] values, Function<T, Integer> code) {
        return List.of(values).stream().map(code).toList();
    }
}
