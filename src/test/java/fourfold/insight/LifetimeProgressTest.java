package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.progress.History;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Guards against a child's stairs that lose what was done, or fill by what was not done. */
class LifetimeProgressTest {
    private static final Family SEVEN_EIGHTS = Family.of(7, 8);

    private static Answer answer(Prompt prompt, Purpose purpose, boolean right) {
        return new Answer(
                new Answer.Place(new UUID(1, 1), new UUID(2, 2), 1),
                new Moment(History.START, 0),
                purpose,
                prompt,
                new Answer.Typing(
                        Integer.toString(prompt.expected() + (right ? 0 : 1)),
                        new Answer.Times(Optional.empty(), Optional.empty()),
                        0),
                Surface.TERMINAL);
    }

    private static LifetimeProgress filled(int times) {
        LifetimeProgress filling = new LifetimeProgress();
        for (int i = 0; i < times; i++) {
            filling.accept(answer(Question.product(8, 7), Purpose.PRACTISE, true));
        }
        return filling;
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "4, 1", "5, 2", "14, 2", "15, 3", "39, 3", "40, 4", "400, 4"})
    void aStoneIsLaidWithTheFirstFifthFifteenthAndFortiethRightAnswer(int right, int stones) {
        assertEquals(stones, filled(right).stones(SEVEN_EIGHTS));
        assertEquals(right > 0 ? 1 : 0, filled(right).begun());
        assertTrue(stones <= LifetimeProgress.MOST);
    }

    @Test
    void aWholeSquareHasFourStones() {
        assertEquals(LifetimeProgress.MOST, filled(40).stones(SEVEN_EIGHTS));
    }

    @Test
    void whatItWasBeforeTheNewestAnswersIsKnown() {
        LifetimeProgress now = filled(6);
        LifetimeProgress before =
                now.before(java.util.Collections.nCopies(2, answer(Question.product(8, 7), Purpose.PRACTISE, true)));
        assertEquals(1, before.stones(SEVEN_EIGHTS));
        assertEquals(2, now.stones(SEVEN_EIGHTS));
        assertEquals(2, now.laid());
    }

    @Test
    void bothOrdersBothDivisionsAndAHiddenFactorFillTheSameCellAndNoOther() {
        LifetimeProgress filling = new LifetimeProgress();
        SEVEN_EIGHTS.questions().forEach(q -> filling.accept(answer(q, Purpose.PRACTISE, true)));
        assertEquals(1, filling.stones(SEVEN_EIGHTS));
        filling.accept(answer(new MissingFactor(new Question(Operation.DIVIDE, 56, 7)), Purpose.AGAIN, true));
        assertEquals(2, filling.stones(SEVEN_EIGHTS));
        assertEquals(1, filling.begun());
    }

    @ParameterizedTest
    @EnumSource(Purpose.class)
    void onlyWhatCameFromMemoryAndWasRightFills(Purpose purpose) {
        Prompt prompt = purpose == Purpose.COPY ? new NumberToCopy(56) : Question.product(7, 8);
        LifetimeProgress filling = new LifetimeProgress();
        filling.accept(answer(prompt, purpose, false));
        assertEquals(0, filling.begun());
        filling.accept(answer(prompt, purpose, true));
        boolean fills = purpose != Purpose.COPY && purpose != Purpose.INTRODUCE;
        assertEquals(fills ? 1 : 0, filling.begun());
    }

    @Property(tries = 50)
    void noAnswerEverTakesAnythingAway(
            @ForAll @Size(max = 200) List<@IntRange(min = 0, max = 199) Integer> questions, @ForAll long seed) {
        LifetimeProgress filling = new LifetimeProgress();
        java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
        for (int question : questions) {
            int[] before = stones(filling);
            int begun = filling.begun();
            filling.accept(answer(Families.questions().get(question), Purpose.PRACTISE, random.nextBoolean()));
            int[] after = stones(filling);
            for (int i = 0; i < before.length; i++) {
                assertTrue(after[i] >= before[i]);
            }
            assertTrue(filling.begun() >= begun);
        }
    }

    private static int[] stones(LifetimeProgress filling) {
        return Families.all().stream().mapToInt(filling::stones).toArray();
    }
}
