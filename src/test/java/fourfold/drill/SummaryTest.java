// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.ParentAction;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.memory.MotorTime;
import fourfold.progress.History;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against telling a child a gain that was none, keeping one back, or timing what is not there yet. */
class SummaryTest {
    private static final Family SIX_SEVENS = Family.of(6, 7);
    private static final Question PRODUCT = Question.product(6, 7);
    private static final UUID DRILL = new UUID(2, 99);

    private static Instant day(int day) {
        return History.START.plus(Duration.ofDays(day));
    }

    /** An answer with a stated time of thinking, by the hands that nothing is known of. */
    private static Answer answer(Question question, Purpose purpose, int day, boolean right, long thinkingMillis) {
        MotorTime hands = MotorTime.unknown();
        Duration thinking = Duration.ofMillis(thinkingMillis);
        return new Answer(
                new Answer.Place(new UUID(1, 1), DRILL, 1),
                new Moment(day(day), 0),
                purpose,
                question,
                new Answer.Typing(
                        Integer.toString(question.expected() + (right ? 0 : 1)),
                        new Answer.Times(
                                Optional.of(hands.firstKey(question.expected(), Surface.TERMINAL)
                                        .plus(thinking)),
                                Optional.of(hands.whole(question.expected(), Surface.TERMINAL)
                                        .plus(thinking))),
                        0),
                Surface.TERMINAL);
    }

    private static Progress begun(Progress before) {
        return before.beginning(new DrillSession(DRILL, new UUID(1, 1), day(5), 0, Duration.ofMinutes(8), 1));
    }

    private static Summary summary(Progress before, Answer... answers) {
        Progress progress = begun(before);
        for (Answer answer : answers) {
            progress = progress.after(answer);
        }
        return Summary.of(before, progress, day(5).plusSeconds(100), true);
    }

    /** Three quarters of the usual time or less, and half a second at least. */
    @ParameterizedTest
    @CsvSource({
        "1500, 2000, true",
        "1501, 2000, false",
        "3000, 4000, true",
        "3001, 4000, false",
        "900, 1400, true",
        "901, 1400, false",
        "0, 499, false",
        "0, 500, true",
        "2000, 2000, false"
    })
    void clearlyQuickerIsAQuarterLessAndHalfASecond(long now, long usual, boolean quicker) {
        assertEquals(quicker, Gains.isQuicker(now, usual));
    }

    private static Progress slow(int times) {
        Progress progress = new History().progress();
        for (int i = 0; i < times; i++) {
            progress = progress.after(answer(PRODUCT, Purpose.PRACTISE, i, true, 4_000));
        }
        return progress;
    }

    private static List<Family> quicker(int before, long... thinking) {
        return Gains.quicker(
                slow(before),
                java.util.Arrays.stream(thinking)
                        .mapToObj(t -> answer(PRODUCT, Purpose.PRACTISE, 5, true, t))
                        .toList());
    }

    /** At least half of the right answers, against three answers before or more. */
    @Test
    void aFamilyIsQuickerWhenHalfOfItsRightAnswersAre() {
        assertEquals(List.of(SIX_SEVENS), quicker(3, 2_000));
        assertEquals(List.of(), quicker(2, 2_000));
        assertEquals(List.of(), quicker(3, 3_900));
        assertEquals(List.of(SIX_SEVENS), quicker(3, 2_000, 3_900));
        assertEquals(List.of(), quicker(3, 2_000, 3_900, 3_900));
        assertEquals(List.of(), quicker(3));
    }

    @Test
    void whatWasWrongOrInViewIsNoGain() {
        Progress before = slow(3);
        assertEquals(List.of(), Gains.quicker(before, List.of(answer(PRODUCT, Purpose.PRACTISE, 5, false, 500))));
        assertEquals(List.of(), Gains.quicker(before, List.of(answer(PRODUCT, Purpose.INTRODUCE, 5, true, 500))));
        assertEquals(
                List.of(SIX_SEVENS),
                summary(before, answer(PRODUCT, Purpose.PRACTISE, 5, true, 500))
                        .changes()
                        .quicker());
    }

    @Test
    void aSummaryTellsWhatWasMetWhatBecameFirmerAndWhatComesAgain() {
        Progress before = new History()
                .asked(SIX_SEVENS, "0s 0s 0s")
                .asked(Family.of(3, 4), "0s 0s 0s 1s")
                .progress();
        Question quotient = new Question(Operation.DIVIDE, 42, 6);
        Question other = new Question(Operation.DIVIDE, 42, 7);
        Summary summary = summary(
                before,
                answer(Question.product(8, 9), Purpose.INTRODUCE, 5, true, 500),
                answer(PRODUCT, Purpose.PRACTISE, 5, true, 9_000),
                answer(quotient, Purpose.PRACTISE, 5, true, 9_000),
                answer(other, Purpose.PRACTISE, 5, true, 9_000),
                answer(Question.product(3, 4), Purpose.PRACTISE, 5, false, 9_000),
                answer(Question.product(4, 3), Purpose.AGAIN, 5, true, 9_000),
                answer(Question.product(2, 2), Purpose.PROBE, 5, false, 9_000));
        // What was tried before its lesson and not known is neither met nor promised.
        assertEquals(List.of(Family.of(8, 9)), summary.changes().met());
        assertEquals(List.of(SIX_SEVENS), summary.changes().firmer());
        assertEquals(List.of(Family.of(3, 4)), summary.changes().again());
        assertEquals(6, summary.answers().asked());
        assertEquals(4, summary.answers().right());
        assertEquals(Duration.ofSeconds(100), summary.practised());
        assertEquals(Optional.of(Family.of(2, 5)), summary.changes().next());
        assertEquals(Optional.empty(), summary.timing());
    }

    @Test
    void theOneGainIsTheMostTelling() {
        Progress before = new History()
                .asked(SIX_SEVENS, "0s 0s 0s")
                .asked(Family.of(3, 4), "0s 0s 0s 1s")
                .progress();
        Summary firmer = summary(
                before,
                answer(PRODUCT, Purpose.PRACTISE, 5, true, 9_000),
                answer(new Question(Operation.DIVIDE, 42, 6), Purpose.PRACTISE, 5, true, 9_000),
                answer(new Question(Operation.DIVIDE, 42, 7), Purpose.PRACTISE, 5, true, 9_000),
                answer(Question.product(9, 9), Purpose.INTRODUCE, 5, true, 500));
        assertEquals(Gain.Kind.FIRMER, firmer.gain().orElseThrow().kind());
        assertEquals(SIX_SEVENS, firmer.gain().orElseThrow().family());
        Summary met = summary(
                before,
                answer(Question.product(2, 2), Purpose.INTRODUCE, 5, true, 500),
                answer(Question.product(8, 9), Purpose.INTRODUCE, 5, true, 500),
                answer(Question.product(1, 10), Purpose.INTRODUCE, 5, true, 500));
        assertEquals(Optional.of(new Gain(Gain.Kind.MET, Family.of(8, 9), 0)), met.gain(), "the hardest is named");
        Summary missed = summary(
                before,
                answer(Question.product(2, 2), Purpose.INTRODUCE, 5, true, 500),
                answer(Question.product(8, 9), Purpose.INTRODUCE, 5, true, 500),
                answer(Question.product(8, 9), Purpose.PRACTISE, 5, false, 9_000));
        assertEquals(Family.of(2, 2), missed.gain().orElseThrow().family(), "what was missed is no gain to tell");
        Summary recalled = summary(before, answer(PRODUCT, Purpose.PRACTISE, 9, true, 9_000));
        assertEquals(Gain.Kind.RECALLED, recalled.gain().orElseThrow().kind());
        assertTrue(recalled.gain().orElseThrow().number() >= 7);
        assertEquals(Optional.empty(), summary(before).gain());
    }

    @Test
    void theDayIsShortHardOrGood() {
        Progress before = new History().asked(SIX_SEVENS, "0s 0s 0s 1s").progress();
        assertEquals(Summary.Day.EMPTY, summary(before).day());
        assertEquals(
                Summary.Day.SHORT,
                summary(before, answer(PRODUCT, Purpose.PRACTISE, 5, true, 9_000))
                        .day());
        assertEquals(Summary.Day.HARD, summary(before, many(20, 10)).day());
        assertEquals(Summary.Day.GOOD, summary(before, many(20, 15)).day());
    }

    private static Answer[] many(int asked, int right) {
        return java.util.stream.IntStream.range(0, asked)
                .mapToObj(i -> answer(PRODUCT, Purpose.PRACTISE, 5, i < right, 9_000))
                .toArray(Answer[]::new);
    }

    @Test
    void aTimingIsToldBesideTheDrillAndNotAsPartOfIt() {
        Summary summary = summary(
                new History().asked(SIX_SEVENS, "0s 0s 0s 1s").progress(),
                answer(PRODUCT, Purpose.TIMED, 5, true, 500),
                answer(PRODUCT, Purpose.TIMED, 5, false, 500));
        assertEquals(0, summary.answers().asked());
        assertEquals(List.of(), summary.changes().again());
        assertEquals(Operation.MULTIPLY, summary.timing().orElseThrow().operation());
        assertEquals(2, summary.timing().orElseThrow().rates().answers());
    }

    private static Progress accurate(int families, ParentAction... actions) {
        History history = new History();
        for (Family family : Families.all().subList(0, families)) {
            history.asked(family, "0s 0s 0s 1s");
        }
        ParentAction[] all = java.util.Arrays.copyOf(actions, actions.length + 1);
        all[actions.length] = new ParentAction.Choose("timing", "minute");
        return history.progress(all);
    }

    /** The days since 1970 decide: an even one has products, an odd one divisions. */
    @Test
    void productsAndDivisionsTakeTurnsFromDayToDay() {
        Progress progress = accurate(12);
        for (int day = 2; day < 6; day++) {
            Operation expected = (History.FIRST_DAY + day) % 2 == 0 ? Operation.MULTIPLY : Operation.DIVIDE;
            List<Question> questions = OneMinuteTiming.questions(progress, day(day), 1);
            assertTrue(questions.stream().allMatch(q -> q.operation() == expected), questions::toString);
            assertEquals(120, questions.size());
        }
    }

    @Test
    void withFewerThanTenAccurateFamiliesNothingIsTimed() {
        assertEquals(List.of(), OneMinuteTiming.questions(accurate(9), day(2), 1));
        assertEquals(120, OneMinuteTiming.questions(accurate(10), day(2), 1).size());
        ParentAction held = new ParentAction.Hold(Families.at(3));
        assertEquals(List.of(), OneMinuteTiming.questions(accurate(10, held), day(2), 1));
        assertTrue(OneMinuteTiming.questions(accurate(11, held), day(2), 1).stream()
                .noneMatch(q -> q.family().equals(Families.at(3))));
    }

    @Test
    void whereOneOperationIsNotThereYetTheOtherIsTimed() {
        History history = new History();
        for (Family family : Families.all().subList(0, 12)) {
            history.asked(Question.product(family.low(), family.high()), "0s 0s 0s 1s");
        }
        Progress progress = history.progress(new ParentAction.Choose("timing", "minute"));
        for (int day = 2; day < 4; day++) {
            List<Question> questions = OneMinuteTiming.questions(progress, day(day), 1);
            assertEquals(120, questions.size());
            assertTrue(questions.stream().allMatch(q -> q.operation() == Operation.MULTIPLY));
        }
    }

    @Property(tries = 20)
    void noProductIsTimedTwiceInARow(@ForAll long seed) {
        List<Question> questions = OneMinuteTiming.questions(accurate(15), day(2), seed);
        for (int i = 1; i < questions.size(); i++) {
            assertNotEquals(
                    questions.get(i - 1).family().product(),
                    questions.get(i).family().product());
        }
    }

    /** Five copies of one digit and five of two make the hands known; one of the two is not enough. */
    @ParameterizedTest
    @CsvSource({"5, 5, true", "5, 4, false", "4, 5, false", "0, 5, false", "5, 0, false"})
    void handsAreKnownForOneDigitAndForTwo(int ones, int twos, boolean known) {
        MotorTime hands = MotorTime.unknown();
        for (int i = 0; i < ones + twos; i++) {
            int number = i < ones ? 7 : 42;
            hands = hands.after(new Answer(
                    new Answer.Place(new UUID(1, 1), DRILL, i + 1),
                    new Moment(day(0).plusSeconds(i), 0),
                    Purpose.COPY,
                    new NumberToCopy(number),
                    new Answer.Typing(
                            Integer.toString(number),
                            new Answer.Times(
                                    Optional.of(Duration.ofMillis(700)), Optional.of(Duration.ofMillis(1_200))),
                            0),
                    Surface.TERMINAL));
        }
        assertEquals(known, WarmUp.handsKnown(hands, Surface.TERMINAL));
        assertEquals(known ? 4 : 10, WarmUp.numbers(known, 4).size());
    }

    @Property(tries = 50)
    void numbersToCopyHaveOneDigitAndTwoInTurnAndNoneComesTwiceInARow(@ForAll long seed, @ForAll boolean known) {
        List<Integer> numbers =
                WarmUp.numbers(known, seed).stream().map(NumberToCopy::number).toList();
        for (int i = 0; i < numbers.size(); i++) {
            int number = numbers.get(i);
            assertTrue(i % 2 == 0 ? number >= 2 && number <= 9 : number >= 11 && number <= 99, numbers::toString);
            assertTrue(i == 0 || number != numbers.get(i - 1));
        }
    }
}
