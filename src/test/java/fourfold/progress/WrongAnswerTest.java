// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against an error told as something it is not. */
class WrongAnswerTest {
    @ParameterizedTest
    @CsvSource({
        "7 x 8, 49, NEIGHBOUR, 7 × 7 = 49",
        "7 x 8, 48, NEIGHBOUR, 6 × 8 = 48",
        "7 x 8, 63, NEIGHBOUR, 7 × 9 = 63",
        "7 x 8, 42, SAME_TABLE, 7 × 6 = 42",
        "7 x 8, 15, OTHER_OPERATION, 3 × 5 = 15",
        "7 x 8, 65, DIGITS_SWAPPED,",
        "7 x 8, 54, OTHER_TABLE, 6 × 9 = 54",
        "7 x 8, 55, OTHER,",
        "3 x 6, 9, OTHER_OPERATION, 3 × 3 = 9",
        "2 x 2, 6, NEIGHBOUR, 2 × 3 = 6",
        "56 / 7, 7, NEIGHBOUR, 49 ÷ 7 = 7",
        "56 / 7, 6, SAME_TABLE, 42 ÷ 7 = 6",
        "56 / 7, 49, OTHER_OPERATION,",
        "56 / 7, 0, OTHER,",
        "56 / 7, 88, OTHER,",
        "56 / 7, 10, SAME_TABLE, 70 ÷ 7 = 10",
        "56 / 7, 11, OTHER,",
        // Both numbers divide it; the nearer way is told, else the one with the same left number.
        "2 x 4, 12, NEIGHBOUR, 3 × 4 = 12",
        "2 x 4, 4, NEIGHBOUR, 1 × 4 = 4",
        "2 x 4, 16, SAME_TABLE, 2 × 8 = 16",
        "2 x 5, 1, DIGITS_SWAPPED, 1 × 1 = 1",
        "100 / 10, 1, SAME_TABLE, 10 ÷ 10 = 1"
    })
    void itsKindIsTheNearestThatFits(String asked, int typed, WrongAnswer.Kind kind, String fact) {
        WrongAnswer wrong = WrongAnswer.of(question(asked), typed);
        assertEquals(kind, wrong.kind());
        assertEquals(
                fact == null ? "" : fact, wrong.fits().map(Object::toString).orElse(""));
    }

    private static Question question(String asked) {
        String[] words = asked.split(" ");
        return new Question(
                words[1].equals("x") ? Operation.MULTIPLY : Operation.DIVIDE,
                Integer.parseInt(words[0]),
                Integer.parseInt(words[2]));
    }

    /** The multiples of an operand and the near ones for 6 × 8, counted by hand from the two tables. */
    @Test
    void theErrorsOfSixTimesEightFallWhereTheTablesSay() {
        Question question = Question.product(6, 8);
        assertEquals(List.of(40, 42, 54, 56), typed(question, WrongAnswer.Kind.NEIGHBOUR));
        assertEquals(
                List.of(6, 8, 12, 16, 18, 24, 30, 32, 36, 60, 64, 72, 80),
                typed(question, WrongAnswer.Kind.SAME_TABLE));
        assertEquals(List.of(14), typed(question, WrongAnswer.Kind.OTHER_OPERATION));
        assertEquals(List.of(84), typed(question, WrongAnswer.Kind.DIGITS_SWAPPED));
    }

    private static List<Integer> typed(Question question, WrongAnswer.Kind kind) {
        return IntStream.rangeClosed(0, 100)
                .filter(n -> n != question.expected())
                .filter(n -> WrongAnswer.of(question, n).kind() == kind)
                .boxed()
                .toList();
    }

    @Test
    void theFactItFitsComesToWhatWasTypedAndIsNeverTheOneAsked() {
        for (Question question : Families.questions()) {
            for (int typed = 0; typed <= 120; typed++) {
                if (typed == question.expected()) {
                    continue;
                }
                WrongAnswer wrong = WrongAnswer.of(question, typed);
                int number = typed;
                wrong.fits().ifPresent(fact -> {
                    assertEquals(number, fact.result());
                    assertTrue(!fact.equals(question.fact()));
                });
            }
            assertThrows(IllegalArgumentException.class, () -> WrongAnswer.of(question, question.expected()));
        }
    }
}
