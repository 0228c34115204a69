// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.ParentAction;
import fourfold.progress.History;
import fourfold.progress.Progress;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a page of paper with the wrong facts on it, or with an answer printed beside its question. */
class PaperQuestionsTest {
    private static final int DAY = 2;

    private static Grid grid(History history, ParentAction... actions) {
        return Grid.of(history.progress(actions), History.at(DAY));
    }

    private static List<Question> questions(History history, int count, long seed) {
        return plain(PaperQuestions.of(grid(history), usual(count), seed));
    }

    private static PageChoice usual(int count) {
        return PageChoice.usual(PageKind.PRACTICE).withCount(count);
    }

    private static List<Question> plain(List<Prompt> prompts) {
        return prompts.stream().map(p -> (Question) p).toList();
    }

    private static Set<Family> families(List<Question> questions) {
        return questions.stream().map(Question::family).collect(Collectors.toSet());
    }

    /** So many families met, some of them better known than others. */
    private static History random(int met, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String[] histories = {"0v", "0w 0r", "0s 0s 0s 1s", "0r 0r 0r 1r 1r", "0w 0w 1w"};
        History history = new History();
        Set<Family> chosen = new HashSet<>();
        while (chosen.size() < met) {
            Family family = Families.at(random.nextInt(Families.COUNT));
            if (chosen.add(family)) {
                history.asked(family, histories[random.nextInt(histories.length)]);
            }
        }
        return history;
    }

    @Property(tries = 200)
    void eachFamilyComesOnceAsAProductAndOnceAsADivisionAndNeverSideBySide(
            @ForAll @IntRange(min = 2, max = 55) int met,
            @ForAll @IntRange(min = 2, max = PaperQuestions.MOST) int count,
            @ForAll long seed) {
        History history = random(met, seed);
        List<Question> questions = questions(history, count, seed);
        int expected = Math.min(met, count / 2);
        for (Operation operation : Operation.values()) {
            List<Question> half =
                    questions.stream().filter(q -> q.operation() == operation).toList();
            assertEquals(questions.size() / 2, half.size());
            assertEquals(expected, families(half).size());
        }
        assertEquals(expected, families(questions).size());
        assertEquals(questions.size(), new HashSet<>(questions).size(), "none twice");
        assertTrue(questions.size() <= count, "no more than was wanted");
        int squares =
                (int) families(questions).stream().filter(Family::isSquare).count();
        assertEquals(
                Math.min(count / 2 * 2, 4 * expected - 2 * squares), questions.size(), "filled with the other facts");
        for (int i = 1; expected > 2 && i < questions.size(); i++) {
            assertNotEquals(questions.get(i - 1).family(), questions.get(i).family(), questions::toString);
        }
    }

    @Test
    void whoHasMetNothingGetsAnEmptyPageAndWhoHasMetOneFamilyGetsItsTwoQuestions() {
        assertEquals(List.of(), questions(new History(), 20, 1));
        History one = new History().asked(Family.of(7, 8), "0r");
        assertEquals(2, questions(one, 2, 1).size());
        assertEquals(4, questions(one, 20, 1).size(), "and then the other two");
    }

    /** Needed most: the lower level, then what fades, then what was right less often, then the first of the stairs. */
    @ParameterizedTest
    @CsvSource({
        "2, 7x9",
        "4, 7x9 8x9",
        "6, 7x9 8x9 6x6",
        "8, 7x9 8x9 6x6 2x2",
        "10, 7x9 8x9 6x6 2x2 5x9",
        "11, 7x9 8x9 6x6 2x2 5x9",
        "12, 7x9 8x9 6x6 2x2 5x9 3x4",
        "14, 7x9 8x9 6x6 2x2 5x9 3x4 3x5",
        "16, 7x9 8x9 6x6 2x2 5x9 3x4 3x5 1x1",
        "40, 7x9 8x9 6x6 2x2 5x9 3x4 3x5 1x1"
    })
    void thePageHoldsTheFamiliesThatNeedItMost(int count, String needed) {
        History history = new History()
                .asked(Family.of(1, 1), "0r 0r 0r 1r 1r")
                // Accurate and due, though oftener right than the two accurate ones that are not due.
                .asked(Family.of(5, 9), "0s 0s 0s 0s 0s 1m 1s")
                .asked(Family.of(3, 4), "0s 0w 0s 0s 1s")
                .asked(Family.of(3, 5), "0s 0w 0s 0s 1s")
                .asked(Family.of(2, 2), "0r")
                .asked(Family.of(6, 6), "0r 0r 0w")
                .asked(Family.of(8, 9), "0r 0w")
                // Met, and never asked from memory.
                .asked(Family.of(7, 9), "0v");
        Set<Family> expected = new HashSet<>();
        for (String name : needed.split(" ")) {
            expected.add(Family.parse(name));
        }
        assertEquals(expected, families(questions(history, count, 3)));
    }

    @Property(tries = 30)
    void whatTheParentHoldsIsNotPrinted(@ForAll long seed) {
        History history = random(20, seed);
        Family held = families(questions(history, 20, seed)).iterator().next();
        List<Question> left = plain(PaperQuestions.of(grid(history, new ParentAction.Hold(held)), usual(40), seed));
        assertFalse(families(left).contains(held));
        assertEquals(19, families(left).size());
    }

    /** Every choice a parent can make, on random children. */
    @Property(tries = 100)
    void whatAParentChoosesIsWhatStandsOnThePage(
            @ForAll @IntRange(min = 1, max = 10) int table,
            @ForAll PageChoice.Asked asked,
            @ForAll PageChoice.Pick pick,
            @ForAll long seed) {
        PageChoice choice = new PageChoice(List.of(table), asked, pick, 20);
        List<Prompt> prompts = PaperQuestions.of(grid(random(15, seed)), choice, seed);
        // A table has ten families, met or not: 19 products, 19 divisions.
        assertEquals(asked == PageChoice.Asked.BOTH ? 20 : 19, prompts.size());
        for (Prompt prompt : prompts) {
            assertTrue(PaperQuestions.family(prompt).contains(table), prompt::toString);
            assertEquals(asked == PageChoice.Asked.MISSING, prompt instanceof MissingFactor);
            assertEquals(prompt, PaperQuestions.ofCode(PaperQuestions.code(prompt)));
            if (asked == PageChoice.Asked.PRODUCTS) {
                assertEquals(Operation.MULTIPLY, ((Question) prompt).operation());
            }
        }
    }

    @Property(tries = 100)
    void aGameHasShakyAndFirmFactsAndNoAnswerTwice(@ForAll long seed) {
        History history = new History();
        Families.inTable(7).forEach(f -> history.asked(f, "0w 0r"));
        Families.inTable(8).stream().filter(f -> !f.contains(7)).forEach(f -> history.asked(f, "1r 1r 1r 2r 2r"));
        Grid grid = grid(history);
        List<Prompt> prompts =
                PaperQuestions.forGame(grid, PageChoice.usual(PageKind.PAIRS).withCount(12), seed);
        assertEquals(12, prompts.size());
        assertEquals(12, prompts.stream().mapToInt(Prompt::expected).distinct().count());
        long shaky = prompts.stream()
                .filter(p -> PaperQuestions.family(p).contains(7))
                .count();
        assertEquals(6, shaky);
    }

    @Test
    void theSeedDecidesTheOrderAndWhichOfTheFourFactsAreAsked() {
        History history = random(12, 5);
        assertEquals(questions(history, 24, 8), questions(history, 24, 8));
        assertNotEquals(questions(history, 24, 8), questions(history, 24, 9));
        History one = new History().asked(Family.of(7, 8), "0r").asked(Family.of(4, 4), "0r");
        Set<Question> seen = LongStream.range(0, 50)
                .boxed()
                .flatMap(seed -> questions(one, 4, seed).stream())
                .collect(Collectors.toSet());
        assertEquals(6, seen.size());
        assertTrue(seen.containsAll(Family.of(7, 8).questions()));
    }

    @Test
    void productsAndDivisionsAreMixedOverTheWholePage() {
        long firstDivisions = LongStream.range(0, 200)
                .filter(seed -> questions(random(12, 5), 24, seed).get(0).operation() == Operation.DIVIDE)
                .count();
        // Half of them, give or take five standard deviations.
        assertTrue(firstDivisions > 65 && firstDivisions < 135, firstDivisions + " of 200");
    }

    /** Dividing by 7 waits for the parent's word, dividing by all else goes by progress. */
    @Property(tries = 30)
    void aDivisionIsPrintedWithItsSignOnlyOnceThatHasCome(@ForAll PageChoice.Asked asked, @ForAll long seed) {
        Progress progress = random(20, seed)
                .progress(new ParentAction.CalendarEntry("tables", "7:-/later"))
                .on(History.at(DAY).getEpochSecond() / 86_400);
        PageChoice choice = new PageChoice(List.of(7), asked, PageChoice.Pick.DUE, 20);
        List<Prompt> before = PaperQuestions.of(Grid.of(progress, History.at(DAY)), choice, seed);
        List<Prompt> printed = PaperQuestions.signed(before, progress);
        assertEquals(before.size(), printed.size());
        for (int i = 0; i < printed.size(); i++) {
            boolean waits = before.get(i) instanceof Question q && q.operation() == Operation.DIVIDE && q.right() == 7;
            assertEquals(waits ? new MissingFactor((Question) before.get(i)) : before.get(i), printed.get(i));
        }
    }
}
