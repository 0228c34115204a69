// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a hint that leads nowhere, or starts from what the child does not know. */
class HintTest {
    private static Set<Family> families(String names) {
        Set<Family> known = new HashSet<>();
        for (String name : names.split(" ")) {
            String[] factors = name.split("x");
            known.add(Family.of(Integer.parseInt(factors[0]), Integer.parseInt(factors[1])));
        }
        return known;
    }

    @ParameterizedTest
    @CsvSource({
        "9, 7, 7x10, NINES, 10 × 7 = 70",
        "7, 9, 7x10, NINES, 10 × 7 = 70",
        "5, 8, 8x10, FIVES, 10 × 8 = 80",
        "6, 7, 6x6, NEAR_SQUARE, 6 × 6 = 36",
        "6, 8, 3x8, DOUBLE, 3 × 8 = 24",
        "8, 6, 4x6, DOUBLE, 4 × 6 = 24",
        "7, 8, 6x8, ONE_MORE, 6 × 8 = 48",
        "7, 8, 8x8, ONE_LESS, 8 × 8 = 64",
        "7, 8, 5x8 2x8, PARTS, 5 × 8 = 40 2 × 8 = 16",
        "10, 4, 1x1, TENS, 10 × 4 = 40"
    })
    void theWayStartsFromWhatIsKnown(int left, int right, String known, Hint.Way way, String from) {
        Set<Family> families = families(known);
        Hint hint = Hint.to(Question.product(left, right), families::contains).orElseThrow();
        assertEquals(way, hint.way());
        assertEquals(from, hint.from().stream().map(Fact::toString).collect(Collectors.joining(" ")));
    }

    @Test
    void aDivisionIsUndoneByItsProduct() {
        Hint hint = Hint.to(new Question(Operation.DIVIDE, 56, 7), f -> true).orElseThrow();
        assertEquals(Hint.Way.INVERSE, hint.way());
        assertEquals("7 × 8 = 56", hint.from().get(0).toString());
    }

    @Property(tries = 200)
    void everyWayArrivesAtTheRightAnswerAndUsesOnlyKnownFamilies(@ForAll long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        Set<Family> known =
                Families.all().stream().filter(f -> dice.nextInt(3) == 0).collect(Collectors.toSet());
        for (Question question : Families.questions()) {
            Optional<Hint> hint = Hint.to(question, known::contains);
            hint.ifPresent(h -> {
                assertEquals(question.expected(), h.arrival(), h.toString());
                if (h.way() != Hint.Way.TENS) {
                    assertTrue(h.from().stream().allMatch(f -> known.contains(f.family())), h.toString());
                }
            });
        }
    }

    @Test
    void whoKnowsNothingIsToldNothingButTheTens() {
        for (Question question : Families.questions()) {
            Optional<Hint> hint = Hint.to(question, f -> false);
            assertTrue(hint.isEmpty() || hint.get().way() == Hint.Way.TENS);
        }
        assertFalse(Hint.to(Question.product(7, 8), Progress.blank(Steering.of(java.util.List.of())))
                .isPresent());
    }

    /** 6 × 6 is accurate, 6 × 7 is not. */
    @Test
    void whatTheChildHasMadeAccurateIsWhatAWayStartsFrom() {
        History history = new History()
                .asked(Family.of(6, 6), "0s 0s 0s 1s")
                .asked(Family.of(6, 7), "0w 0w 1r")
                .asked(Family.of(8, 8), "0r 0r 0r 0r");
        Progress progress = history.progress();
        Hint hint = Hint.to(Question.product(6, 7), progress).orElseThrow();
        assertEquals(Hint.Way.NEAR_SQUARE, hint.way());
        assertEquals(Optional.empty(), Hint.to(Question.product(8, 9), progress));
        assertEquals(Optional.empty(), Hint.to(new Question(Operation.DIVIDE, 42, 6), progress));
        assertEquals(
                Hint.Way.INVERSE,
                Hint.to(new Question(Operation.DIVIDE, 36, 6), progress)
                        .orElseThrow()
                        .way());
    }

    @Test
    void tenTimesOneHasNoTens() {
        assertEquals(Optional.empty(), Hint.to(Question.product(10, 1), f -> false));
        assertEquals(
                Hint.Way.TENS,
                Hint.to(Question.product(10, 2), f -> false).orElseThrow().way());
    }
}
