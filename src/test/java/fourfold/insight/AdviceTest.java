// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.progress.History;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against advice to a parent that the family's answers do not bear out. */
class AdviceTest {
    private static final Family SEVEN_EIGHTS = Family.of(7, 8);

    private static Advice advice(History history, int day) {
        return Advice.of(history.progress(), history.record(SEVEN_EIGHTS), SEVEN_EIGHTS, History.at(day));
    }

    private static History history(String product, String bySeven, String byEight) {
        return new History()
                .asked(Trace.product(SEVEN_EIGHTS), product)
                .asked(Trace.quotient(SEVEN_EIGHTS, 7), bySeven)
                .asked(Trace.quotient(SEVEN_EIGHTS, 8), byEight);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                    | ''                    | ''                    |  1 | NEW",
                "0v                    | ''                    | ''                    |  1 | ACQUIRING",
                "0w 0w 1r              | 0w 0w 1r              | 0w 0w 1r              |  2 | ACQUIRING",
                // Only the product lags behind.
                "0w 0w 1r              | 0s 0s 0s 1s           | 0s 0s 0s 1s           |  2 | ACQUIRING",
                // One division is not there, or was never asked, while the product is.
                "0s 0s 0s 1s           | 0w 0w 1r              | 0s 0s 0s 1s           |  2 | DIVISION_BEHIND",
                "0s 0s 0s 1s           | 0s 0s 0s 1s           | 0w 0w 1r              |  2 | DIVISION_BEHIND",
                "0r 0r 0r 1r 2r 9r     | 0s 0s 0s 1s           | ''                    |  9 | DIVISION_BEHIND",
                "0s 0s 0s 1s           | 0s 0s 0s 1s           | 0s 0s 0s 1s           |  2 | SLOW",
                "0r 0r 0r 1r 1r        | 0r 0r 0r 1r 1r        | 0s 0s 0s 1s           |  2 | SLOW",
                "0s 0s 0s 1s           | 0s 0s 0s 1s           | 0s 0s 0s 1s           |  3 | FADING",
                "0r 0r 0r 1r 1r        | 0r 0r 0r 1r 1r        | 0r 0r 0r 1r 1r        |  2 | FLUENT",
                "0r 0r 0r 1r 1r        | 0r 0r 0r 1r 1r        | 0r 0r 0r 1r 1r        |  3 | FADING",
                "0r 0r 0r 1r 1r 2r 9r  | 0r 0r 0r 1r 1r 2r 9r  | 0r 0r 0r 1r 1r 2r 9r  | 10 | LASTING",
                "0r 0r 0r 1r 1r 2r 9r  | 0r 0r 0r 1r 1r 2r 9r  | 0r 0r 0r 1r 1r 2r 9r  | 17 | FADING"
            })
    void theFirstThingThatHoldsIsToldAndNothingElse(
            String product, String bySeven, String byEight, int day, Advice.About about) {
        assertEquals(new Advice(about, Optional.empty()), advice(history(product, bySeven, byEight), day));
    }

    /** 54 is 6 × 9, 48 is 6 × 8, and 57 is the product of no two numbers up to ten. */
    @ParameterizedTest
    @CsvSource({
        "0=54 1=54, 2, CONFUSED",
        "0=54, 2, ACQUIRING",
        "0=54 1=48, 2, ACQUIRING",
        "0=54 1=48 1=48, 2, CONFUSED",
        "0=57 1=57, 2, ACQUIRING",
        "0w 1m, 2, ACQUIRING",
        // Within 45 days of the last one.
        "0=54 3=54, 48, CONFUSED",
        "0=54 3=54, 49, ACQUIRING",
        // Accurate is not enough to be rid of it, fluent is.
        "0=54 1=54 2s 2s 3s 3s, 3, CONFUSED",
        "0=54 1=54 2r 2r 3r 3r 3r, 3, DIVISION_BEHIND"
    })
    void oneWrongNumberThatKeepsComingIsAFactThatStandsInTheWay(String product, int day, Advice.About about) {
        assertEquals(about, advice(history(product, "0v", "0v"), day).about());
    }

    @Test
    void theWrongNumberThatCameMostIsNamedWithTheFactItBelongsTo() {
        Advice advice = advice(history("0=48 0=54 1=48 1=54 1=54", "0=9 0=9", "0v"), 2);
        assertEquals(Advice.About.CONFUSED, advice.about());
        TraceRecord.Wrong wrong = advice.wrong().orElseThrow();
        assertEquals(54, wrong.answer().typed());
        assertEquals(3, wrong.times());
        assertEquals("6 × 9 = 54", wrong.answer().fits().orElseThrow().toString());
    }

    @Test
    void aDivisionCanBeTheOneThatIsMixedUp() {
        Advice advice = advice(history("0s 0s 0s 1s", "0=9 1=9", "0s 0s 0s 1s"), 2);
        assertEquals(Advice.About.CONFUSED, advice.about());
        assertEquals(
                "63 ÷ 7 = 9",
                advice.wrong().orElseThrow().answer().fits().orElseThrow().toString());
    }

    @Property(tries = 100)
    void oneMoreFamilyPractisedChangesNoAdviceForThisOne(@ForAll @IntRange(min = 0, max = 54) int other) {
        Family family = fourfold.facts.Families.at(other);
        History history = history("0s 0s 0s 1s", "0s 0s 0s 1s", "0s 0s 0s 1s");
        Advice alone = advice(history, 2);
        if (!family.equals(SEVEN_EIGHTS)) {
            assertEquals(alone, advice(history.asked(family, "0w 1w 1=56 1=56"), 2));
        }
    }
}
