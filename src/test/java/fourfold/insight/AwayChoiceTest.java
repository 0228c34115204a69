// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.log.ParentAction;
import fourfold.progress.Hint;
import fourfold.progress.History;
import fourfold.progress.Progress;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against minutes away from the screen spent on what needs them least, or with a hint that is of no help. */
class AwayChoiceTest {
    private static final String ACCURATE = "0s 0s 0s 1s";
    private static final String FLUENT = "0r 0r 0r 1r 1r";
    private static final Family SEVEN_EIGHTS = Family.of(7, 8);

    private static List<AwayChoice> choices(History history, int day, ParentAction... actions) {
        Progress progress = history.progress(actions);
        return AwayChoice.of(progress, Grid.of(progress, History.at(day)));
    }

    private static List<String> families(List<AwayChoice> choices) {
        return choices.stream().map(c -> c.family().toString()).toList();
    }

    @Test
    void theLowestLevelComesFirstThenTheFewestRightThenTheFirstOfTheStairsAndFourAreEnough() {
        History history = new History()
                .asked(Family.of(2, 9), ACCURATE)
                .asked(Family.of(2, 3), FLUENT)
                .asked(Family.of(2, 4), "0v")
                .asked(Family.of(8, 9), "0r 0w 0w")
                .asked(Family.of(2, 2), "0r")
                .asked(Family.of(3, 3), "0r 0w 0r 0w")
                .asked(Family.of(4, 4), "0r 0w");
        assertEquals(List.of("8x9", "3x3", "4x4", "2x2"), families(choices(history, 2)));
        assertEquals(
                List.of("3x3", "4x4", "2x2", "2x9"),
                families(choices(history, 2, new ParentAction.Hold(Family.of(8, 9)))));
        assertEquals(AwayChoice.MOST, families(choices(history, 2)).size());
    }

    @Test
    void whatIsFluentNeedsNoMinutesUntilItFades() {
        History history = new History().asked(SEVEN_EIGHTS, FLUENT);
        assertEquals(List.of(), choices(history, 2));
        assertEquals(List.of("7x8"), families(choices(history, 3)));
        assertEquals(List.of(), choices(new History(), 3));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // A division is what is weak, and its product is there.
                "0s 0s 0s 1s | 0w          | 0s 0s 0s 1s | 56 ÷ 7 | INVERSE",
                "0s 0s 0s 1s | 0s 0s 0s 1s | 0w 0r       | 56 ÷ 8 | INVERSE",
                "0s 0s 0s 1s | 0w 0r       | 0w 0w 0r    | 56 ÷ 8 | INVERSE",
                "0s 0s 0s 1s | 0w          | ''          | 56 ÷ 8 | INVERSE",
                // The product is not there yet: it comes first, on a way from 7 × 7.
                "0w 0w       | 0w          | 0w          | 7 × 8  | NEAR_SQUARE",
                "0w 0r       | 0w          | 0w 0r       | 56 ÷ 7 | NEAR_SQUARE",
                "0w          | 0s 0s 0s 1s | 0s 0s 0s 1s | 7 × 8  | NEAR_SQUARE"
            })
    void theWeakestFactIsNamedWithAWayToItFromWhatTheChildKnows(
            String product, String bySeven, String byEight, String weakest, Hint.Way way) {
        History history = new History()
                .asked(Family.of(7, 7), FLUENT)
                .asked(Trace.product(SEVEN_EIGHTS), product)
                .asked(Trace.quotient(SEVEN_EIGHTS, 7), bySeven)
                .asked(Trace.quotient(SEVEN_EIGHTS, 8), byEight);
        AwayChoice choice = choices(history, 2).get(0);
        assertEquals(SEVEN_EIGHTS, choice.family());
        assertEquals(weakest, choice.weakest().toString());
        assertEquals(Optional.of(way), choice.hint().map(Hint::way));
    }

    @Test
    void whoKnowsNothingThatLeadsThereGetsNoHint() {
        AwayChoice choice = choices(new History().asked(SEVEN_EIGHTS, "0w"), 1).get(0);
        assertEquals(Optional.empty(), choice.hint());
    }
}
