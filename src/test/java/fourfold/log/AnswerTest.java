// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Guards against an answer that is kept though it can't have been given, or judged by anything but what was typed. */
class AnswerTest {
    private static final Instant EVENING = Instant.parse("2026-03-02T23:30:00Z");
    private static final Question ASKED = Question.product(7, 8);

    private static Answer answer(
            int position,
            int zone,
            Purpose purpose,
            Prompt prompt,
            String typed,
            long first,
            long whole,
            int erasures) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), position),
                new Moment(EVENING, zone),
                purpose,
                prompt,
                new Answer.Typing(
                        typed,
                        new Answer.Times(
                                purpose.isTyped() ? Optional.of(Duration.ofMillis(first)) : Optional.empty(),
                                Optional.of(Duration.ofMillis(whole))),
                        erasures),
                Surface.TERMINAL);
    }

    private static Answer typed(Prompt prompt, String typed) {
        return answer(1, 0, prompt instanceof NumberToCopy ? Purpose.COPY : Purpose.PRACTISE, prompt, typed, 1, 2, 0);
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0, 56, 0, 0, 0, true",
        "0, 0, 56, 0, 0, 0, false",
        "10000, 0, 56, 0, 0, 0, true",
        "10001, 0, 56, 0, 0, 0, false",
        "1, 1080, 56, 0, 0, 0, true",
        "1, 1081, 56, 0, 0, 0, false",
        "1, -1080, 56, 0, 0, 0, true",
        "1, -1081, 56, 0, 0, 0, false",
        "1, 0, 9999, 0, 0, 0, true",
        "1, 0, 00056, 0, 0, 0, false",
        "1, 0, '', 0, 0, 0, true",
        "1, 0, 5a, 0, 0, 0, false",
        "1, 0, 5/, 0, 0, 0, false",
        "1, 0, 5:, 0, 0, 0, false",
        "1, 0, 09, 0, 0, 0, true",
        "1, 0, 56, -1, 0, 0, false",
        "1, 0, 56, 0, -1, 0, false",
        "1, 0, 56, 0, 0, -1, false",
        "1, 0, 56, 0, 0, 100000, true",
        "1, 0, 56, 0, 0, 100001, false"
    })
    void whatCannotHaveBeenGivenIsRefused(
            int position, int zone, String typed, long first, long whole, int erasures, boolean taken) {
        if (taken) {
            assertDoesNotThrow(() -> answer(position, zone, Purpose.PRACTISE, ASKED, typed, first, whole, erasures));
        } else {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> answer(position, zone, Purpose.PRACTISE, ASKED, typed, first, whole, erasures));
        }
    }

    @ParameterizedTest
    @EnumSource(Purpose.class)
    void aNumberToCopyIsCopiedAndNothingElseIs(Purpose purpose) {
        Prompt fits = purpose == Purpose.COPY ? new NumberToCopy(56) : ASKED;
        Prompt other = purpose == Purpose.COPY ? ASKED : new NumberToCopy(56);
        assertDoesNotThrow(() -> answer(1, 0, purpose, fits, "56", 1, 2, 0));
        assertThrows(IllegalArgumentException.class, () -> answer(1, 0, purpose, other, "56", 1, 2, 0));
    }

    @ParameterizedTest
    @EnumSource(Purpose.class)
    void onlyWhatWasTypedHasAFirstKeyAndOnlyWhatWasSaidAloudHasAPace(Purpose purpose) {
        Answer answer = answer(1, 0, purpose, purpose == Purpose.COPY ? new NumberToCopy(56) : ASKED, "56", 1, 2, 0);
        Optional<Duration> time = Optional.of(Duration.ofSeconds(1));
        Answer.Times keyed = new Answer.Times(time, time);
        Answer.Times heard = Answer.Times.heard(Answer.Pace.SLOW);
        if (purpose == Purpose.PAPER || purpose == Purpose.ALOUD) {
            assertThrows(InvalidValue.class, () -> answer.with(new Answer.Typing("56", keyed, 0)));
        } else {
            assertEquals(time, answer.with(new Answer.Typing("56", keyed, 0)).firstKey());
        }
        if (purpose == Purpose.ALOUD) {
            assertEquals(
                    Optional.of(Answer.Pace.SLOW),
                    answer.with(new Answer.Typing("56", heard, 0)).pace());
        } else {
            assertThrows(InvalidValue.class, () -> answer.with(new Answer.Typing("56", heard, 0)));
        }
        assertEquals(Optional.empty(), answer.pace());
    }

    @Test
    void aPaceHasAWord() {
        for (Answer.Pace pace : Answer.Pace.values()) {
            assertEquals(pace, Answer.Pace.ofWord(pace.word()));
        }
        assertThrows(InvalidValue.class, () -> Answer.Pace.ofWord("brisk"));
    }

    @ParameterizedTest
    @CsvSource({
        "56, true, false",
        "056, true, false",
        "0056, true, false",
        "54, false, false",
        "65, false, false",
        "5, false, false",
        "560, false, false",
        "'', false, true",
        "0, false, false"
    })
    void onlyTheRightNumberIsRightAndLeadingNoughtsAreForgiven(String typed, boolean right, boolean missing) {
        assertEquals(right, typed(ASKED, typed).isCorrect());
        assertEquals(missing, typed(ASKED, typed).isMissing());
    }

    @Property(tries = 200)
    void oneNumberAloneIsRightForEveryQuestion(
            @ForAll @IntRange(min = 0, max = 199) int question, @ForAll @IntRange(min = 0, max = 9999) int number) {
        Question asked = Families.questions().get(question);
        assertEquals(
                number == asked.expected(),
                typed(asked, Integer.toString(number)).isCorrect());
        assertTrue(typed(asked, Integer.toString(asked.expected())).isCorrect());
    }

    @Test
    void aHiddenFactorIsADivisionInAnotherForm() {
        Question quotient = new Question(Operation.DIVIDE, 56, 7);
        Answer hidden = typed(new MissingFactor(quotient), "8");
        assertTrue(hidden.isCorrect());
        assertEquals(Optional.of(quotient), hidden.question());
        assertEquals("7 × ? = 56", hidden.prompt().toString());
        assertEquals(Optional.of(ASKED), typed(ASKED, "56").question());
        assertEquals(Optional.empty(), typed(new NumberToCopy(56), "56").question());
        assertThrows(IllegalArgumentException.class, () -> new MissingFactor(ASKED));
    }

    /** Half past eleven in the evening by UTC, and already the next day from thirty minutes ahead on. */
    @ParameterizedTest
    @CsvSource({"0, 0", "29, 0", "30, 1", "1080, 1", "-1080, 0"})
    void theDayIsThatOfTheChildsClock(int zone, int day) {
        Answer answer = answer(1, zone, Purpose.PRACTISE, ASKED, "56", 1, 2, 0);
        assertEquals(EVENING.getEpochSecond() / 86_400 + day, answer.localDay());
        DrillSession session =
                new DrillSession(new UUID(2, 2), new UUID(1, 1), EVENING, zone, Duration.ofMinutes(8), 1);
        assertEquals(answer.localDay(), session.localDay());
    }

    @ParameterizedTest
    @CsvSource({"59, false", "60, true", "1800, true", "1801, false"})
    void aDrillIsPlannedForOneToThirtyMinutes(int seconds, boolean taken) {
        Duration planned = Duration.ofSeconds(seconds);
        if (taken) {
            assertEquals(planned, new DrillSession(new UUID(2, 2), new UUID(1, 1), EVENING, 0, planned, 1).planned());
        } else {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new DrillSession(new UUID(2, 2), new UUID(1, 1), EVENING, 0, planned, 1));
        }
    }

    /** A name-based identifier has version 3 (RFC 9562); drill and place alone decide it. */
    @Test
    void anAnswersNameIsMadeFromItsDrillAndItsPlace() {
        Answer one = answer(1, 0, Purpose.PRACTISE, ASKED, "56", 1, 2, 0);
        assertEquals(
                one.id(), answer(1, 60, Purpose.AGAIN, ASKED, "54", 9, 10, 3).id());
        assertNotEquals(
                one.id(), answer(2, 0, Purpose.PRACTISE, ASKED, "56", 1, 2, 0).id());
        assertEquals(3, one.id().version());
    }

    @Test
    void everyWordOfAFileNamesWhatItStandsFor() {
        for (Purpose purpose : Purpose.values()) {
            assertEquals(purpose, Purpose.ofWord(purpose.word()));
        }
        for (Surface surface : Surface.values()) {
            assertEquals(surface, Surface.ofWord(surface.word()));
        }
        for (Operation operation : Operation.values()) {
            assertEquals(operation, Operation.ofWord(operation.word()));
            assertNotEquals(operation, operation.inverse());
            assertEquals(operation, operation.inverse().inverse());
        }
        assertThrows(IllegalArgumentException.class, () -> Purpose.ofWord("play"));
        assertThrows(IllegalArgumentException.class, () -> Surface.ofWord("wall"));
        assertThrows(IllegalArgumentException.class, () -> Operation.ofWord("add"));
        assertEquals(
                "× ÷ x /",
                "" + Operation.MULTIPLY.sign() + ' ' + Operation.DIVIDE.sign() + ' ' + Operation.MULTIPLY.plainSign()
                        + ' ' + Operation.DIVIDE.plainSign());
    }

    @ParameterizedTest
    @CsvSource({"1, true", "100, true", "0, false", "101, false"})
    void aNumberToCopyIsFromOneToAHundred(int number, boolean taken) {
        if (taken) {
            assertEquals(number, new NumberToCopy(number).expected());
        } else {
            assertThrows(IllegalArgumentException.class, () -> new NumberToCopy(number));
        }
    }

    @Test
    void aNameHasOneToFortyCharactersOfAnyScriptAndNoBlanksAtItsEnds() {
        assertEquals("Åsa", new Child(new UUID(1, 1), "  Åsa ", EVENING).name());
        String longest = "\uD83D\uDE00".repeat(40);
        assertEquals(longest, ChildName.chosen(longest));
        for (String refused : List.of("", "  ", longest + "x", "a\tb", "a\u2028b", "a\u2029b", "a\uD83Db")) {
            assertThrows(IllegalArgumentException.class, () -> ChildName.chosen(refused), refused);
        }
    }

    @Test
    void anOrderNamesEachTableOnceAndATableIsFromOneToTen() {
        assertEquals(Families.USUAL_ORDER, new ParentAction.Order(Families.USUAL_ORDER).tables());
        for (List<Integer> refused : List.of(
                List.of(1, 2, 3),
                List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 9),
                List.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9),
                List.of(2, 3, 4, 5, 6, 7, 8, 9, 10, 11))) {
            assertThrows(IllegalArgumentException.class, () -> new ParentAction.Order(refused), refused::toString);
        }
        for (int table : new int[] {0, 11}) {
            assertThrows(IllegalArgumentException.class, () -> new ParentAction.OpenTable(table));
            assertThrows(IllegalArgumentException.class, () -> new ParentAction.CloseTable(table));
            assertThrows(IllegalArgumentException.class, () -> Families.inTable(table));
        }
    }

    @ParameterizedTest
    @CsvSource({"name, true", "archived, true", "same, true", "minutes, false"})
    void someChoicesSayWhoTheChildIs(String setting, boolean who) {
        assertEquals(who, new ParentAction.Choose(setting, "x").isOfWhoTheChildIs());
    }

    @Test
    void aFamilyKnowsItsFactorsAndItsFacts() {
        Family family = Family.of(8, 7);
        assertTrue(family.contains(7) && family.contains(8) && !family.contains(56));
        assertEquals(8, family.partnerOf(7));
        assertEquals(7, family.partnerOf(8));
        assertThrows(IllegalArgumentException.class, () -> family.partnerOf(6));
        assertEquals(
                List.of("7 × 8 = 56", "8 × 7 = 56", "56 ÷ 7 = 8", "56 ÷ 8 = 7"),
                family.facts().stream().map(Fact::toString).toList());
        assertEquals(
                List.of("6 × 6 = 36", "36 ÷ 6 = 6"),
                Family.of(6, 6).facts().stream().map(Fact::toString).toList());
        assertTrue(family.facts().stream().allMatch(f -> f.family().equals(family)));
        assertTrue(family.facts().stream().allMatch(f -> f.question().fact().equals(f)));
        assertFalse(family.equals(Family.of(7, 9)) || family.equals(Family.of(8, 8)));
        for (int[] factors : new int[][] {{0, 5}, {5, 11}, {8, 7}}) {
            assertThrows(IllegalArgumentException.class, () -> new Family(factors[0], factors[1]));
        }
    }

    @Test
    void turningAroundAndUndoingStayInTheFamily() {
        Question quotient = new Question(Operation.DIVIDE, 56, 7);
        assertEquals(Question.product(8, 7), ASKED.turnAround());
        assertEquals(new Question(Operation.DIVIDE, 56, 8), quotient.turnAround());
        assertEquals(ASKED.family(), quotient.turnAround().family());
        assertThrows(IllegalArgumentException.class, () -> Question.quotient(Family.of(7, 8), 6));
        assertThrows(IllegalArgumentException.class, () -> Trace.quotient(Family.of(7, 8), 6));
        assertThrows(IllegalArgumentException.class, () -> new Trace(Operation.MULTIPLY, Family.of(7, 8), 7));
    }
}
