// SPDX-License-Identifier: Apache-2.0
package fourfold.facts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Guards against a missing, doubled or wrong fact: the outside counts are named beside each check. */
class FamiliesTest {
    @Test
    void thereAreFiftyFiveFamiliesAndTwoHundredQuestions() {
        // n(n+1)/2 families for n = 10; 45 have four questions, the 10 squares two.
        assertEquals(55, Families.all().size());
        assertEquals(55, new HashSet<>(Families.all()).size());
        assertEquals(200, new HashSet<>(Families.questions()).size());
        assertEquals(10, Families.all().stream().filter(Family::isSquare).count());
    }

    @Test
    void thereAreFortyTwoDistinctProducts() {
        // OEIS A027424, number of distinct products in the n × n table: a(10) = 42.
        assertEquals(42, Families.all().stream().map(Family::product).distinct().count());
    }

    @Test
    void theHundredProductsAddUpToTheSquareOfFiftyFive() {
        // Sum of all i·j for i, j from 1 to 10 is (1 + … + 10)² = 55² = 3025.
        assertEquals(
                3025,
                Families.questions().stream()
                        .filter(q -> q.operation() == Operation.MULTIPLY)
                        .mapToInt(Question::expected)
                        .sum());
    }

    @Test
    void everyProductOfTwoOneDigitNumbersAndEveryQuotientWithinAHundredIsAsked() {
        // Common Core State Standards 3.OA.C.7 (2010): products of two one-digit numbers known from memory, and
        // fluent division within 100; 3.OA.B.6: division as an unknown-factor problem.
        Set<Question> all = new HashSet<>(Families.questions());
        for (int a = 1; a <= 9; a++) {
            for (int b = 1; b <= 9; b++) {
                Question product = Question.product(a, b);
                assertTrue(all.contains(product), product.toString());
                Question quotient = new Question(Operation.DIVIDE, a * b, a);
                assertTrue(all.contains(quotient), quotient.toString());
                assertEquals(b, quotient.expected());
                assertEquals(a * b, quotient.right() * quotient.expected(), "the unknown factor undoes the product");
            }
        }
    }

    @Test
    void indexesOfFamiliesAndTracesCountWithoutGaps() {
        for (int i = 0; i < Families.COUNT; i++) {
            assertEquals(i, Families.at(i).index());
        }
        assertEquals(Trace.COUNT, Families.traces().size());
        for (int i = 0; i < Trace.COUNT; i++) {
            assertEquals(i, Families.traces().get(i).index());
        }
    }

    @Test
    void bothOrdersOfAProductShareATraceAndTheTwoDivisionsDoNot() {
        assertEquals(Question.product(7, 8).trace(), Question.product(8, 7).trace());
        Family family = Family.of(8, 7);
        assertEquals(3, family.traces().size());
        assertEquals(2, Family.of(6, 6).traces().size());
    }

    @Test
    void everyQuestionComesBackFromItsTrace() {
        for (Question question : Families.questions()) {
            assertTrue(question.trace().questions().contains(question));
            assertTrue(question.family().traces().contains(question.trace()));
        }
    }

    @Test
    void theUsualOrderIntroducesEachFamilyOnceAndBeginsWithOneThatExplainsSomething() {
        assertEquals(55, Families.introducedBy(Families.USUAL_ORDER).size());
        assertEquals(
                List.of("2x5", "2x2", "2x3"),
                Families.introducedBy(Families.USUAL_ORDER).stream()
                        .limit(3)
                        .map(Family::toString)
                        .toList());
    }

    @Test
    void aFamilyIsReadInEitherOrderAndNonsenseIsRefused() {
        assertEquals(new Family(6, 7), Family.parse("7x6"));
        assertEquals(new Family(6, 7), Family.parse(" 6 × 7 "));
        assertThrows(IllegalArgumentException.class, () -> Family.parse("6x11"));
        assertThrows(IllegalArgumentException.class, () -> Family.parse("seven"));
        assertThrows(IllegalArgumentException.class, () -> new Fact(Operation.DIVIDE, 56, 9));
        assertThrows(IllegalArgumentException.class, () -> new Fact(Operation.DIVIDE, 110, 10));
    }

    @Test
    void a_question_knows_the_index_of_its_trace() {
        for (Question question : Families.questions()) {
            assertEquals(question.trace().index(), question.traceIndex(), question.toString());
        }
    }
}
