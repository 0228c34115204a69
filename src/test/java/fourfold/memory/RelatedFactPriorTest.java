// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a new fact that is expected to fade as it should not, given what it is and what its kin have shown. */
class RelatedFactPriorTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final int ONE_SEVEN = product(1, 7);
    private static final int SIX_SEVEN = product(6, 7);

    private enum Kind {
        RULE,
        SQUARE,
        OTHER;

        double rate() {
            return USUAL.usualRate
                    + switch (this) {
                        case RULE -> USUAL.ruleRate;
                        case SQUARE -> USUAL.squareRate;
                        case OTHER -> 0;
                    };
        }
    }

    private static int product(int a, int b) {
        return Trace.product(Family.of(a, b)).index();
    }

    /** Cooney, Swanson and Ladd 1988 for rules; De Brauwer, Verguts and Fias 2006 for squares; the sizes are our own. */
    @ParameterizedTest
    @CsvSource({
        "1x1, RULE",
        "1x2, RULE",
        "1x9, RULE",
        "1x10, RULE",
        "2x10, RULE",
        "9x10, RULE",
        "10x10, RULE",
        "2x2, SQUARE",
        "7x7, SQUARE",
        "9x9, SQUARE",
        "2x3, OTHER",
        "2x9, OTHER",
        "7x8, OTHER",
        "8x9, OTHER"
    })
    void timesOneAndTenFadeLeastOfAllAndSquaresLessThanTheRest(String family, Kind kind) {
        RelatedFactPrior kin = new RelatedFactPrior(USUAL);
        for (Trace trace : Family.parse(family).traces()) {
            assertEquals(kind.rate(), kin.expected(trace.index()), 1e-12, trace::toString);
        }
    }

    @Test
    void aFactByRuleSeenOnceIsRememberedLongerThanASquareAndASquareLongerThanAnyOther() {
        Memory memory = Memory.blank(USUAL);
        for (Family family : List.of(Family.of(1, 7), Family.of(4, 10), Family.of(5, 5), Family.of(4, 6))) {
            memory = memory.after(Given.shown(family.questions().get(0), Given.START), MotorTime.unknown());
        }
        double byOne = memory.rate(Trace.product(Family.of(1, 7)));
        double byTen = memory.rate(Trace.product(Family.of(4, 10)));
        double square = memory.rate(Trace.product(Family.of(5, 5)));
        double other = memory.rate(Trace.product(Family.of(4, 6)));
        assertEquals(byOne, byTen, 1e-12);
        String rates = String.format(Locale.ROOT, "%s %s %s", byOne, square, other);
        assertTrue(byOne < square - 0.005 && square < other - 0.005, rates);
        var later = Given.START.plus(Duration.ofDays(4));
        assertTrue(memory.forecast(Trace.product(Family.of(1, 7)), later).activation()
                > memory.forecast(Trace.product(Family.of(4, 6)), later).activation());
    }

    @Test
    void aFactThatFadesJustAsItsKindDoesSaysNothingOfItsKin() {
        RelatedFactPrior kin = new RelatedFactPrior(USUAL);
        for (Trace trace : Families.traces()) {
            kin.put(trace.index(), new RelatedFactPrior(USUAL).expected(trace.index()));
        }
        for (Trace trace : Families.traces()) {
            assertEquals(new RelatedFactPrior(USUAL).expected(trace.index()), kin.expected(trace.index()), 1e-12);
        }
    }

    /** Worked by hand from the weights, once for each kind of kinship: table, size and operation, none but operation. */
    @Test
    void whatOneFactShowsCountsForItsKinByTheirWeights() {
        RelatedFactPrior kin = new RelatedFactPrior(USUAL);
        double off = 0.1;
        kin.put(SIX_SEVEN, USUAL.usualRate + off);
        double mean = off / (1 + USUAL.priorStrength);
        double beyond = off - mean;
        double table = USUAL.table;
        double size = USUAL.size;
        // 3 × 7 shares a table; 5 × 9 is of the same size, 26 to 50; 2 × 2 is neither.
        assertEquals(USUAL.usualRate + mean + table * beyond / (1 + table), kin.expected(product(3, 7)), 1e-12);
        assertEquals(USUAL.usualRate + mean + size * beyond / (1 + size), kin.expected(product(5, 9)), 1e-12);
        assertEquals(USUAL.usualRate + mean, kin.expected(product(2, 3)), 1e-12);
        // A division of the same family shares family, both tables and the size, and not the operation.
        double all = USUAL.family + 2 * table + size;
        assertEquals(
                USUAL.usualRate + all * off / (1 + all),
                kin.expected(Trace.quotient(Family.of(6, 7), 6).index()),
                1e-12);
    }

    /** Products up to 25, to 50, and beyond. */
    @ParameterizedTest
    @CsvSource({
        "5x5, 3x8, true",
        "5x5, 3x9, false",
        "4x6, 3x9, false",
        "4x7, 5x10, true",
        "4x7, 6x8, true",
        "5x10, 6x9, false",
        "6x8, 7x9, false",
        "7x8, 6x9, true"
    })
    void factsAreKinBySizeUpTo25UpTo50AndBeyond(String one, String other, boolean kin) {
        RelatedFactPrior all = new RelatedFactPrior(USUAL);
        double before = all.expected(Trace.product(Family.parse(other)).index());
        all.put(
                Trace.product(Family.parse(one)).index(),
                all.expected(Trace.product(Family.parse(one)).index()) + 0.1);
        double mean = 0.1 / (1 + USUAL.priorStrength);
        double share = all.expected(Trace.product(Family.parse(other)).index()) - before - mean;
        assertEquals(kin ? USUAL.size * (0.1 - mean) / (1 + USUAL.size) : 0, share, 1e-12);
    }

    @Property(tries = 100)
    void evidenceThatIsTakenBackOrReplacedLeavesNoTrace(
            @ForAll @IntRange(min = 0, max = Trace.COUNT - 1) int trace,
            @ForAll @IntRange(min = 0, max = Trace.COUNT - 1) int other,
            @ForAll @DoubleRange(min = 0.06, max = 0.46) double rate,
            @ForAll @DoubleRange(min = 0.06, max = 0.46) double second) {
        RelatedFactPrior once = new RelatedFactPrior(USUAL);
        once.put(trace, rate);
        RelatedFactPrior twice = new RelatedFactPrior(USUAL);
        twice.put(trace, second);
        twice.put(trace, rate);
        assertEquals(once.expected(other), twice.expected(other), 1e-9);
        RelatedFactPrior copy = new RelatedFactPrior(twice);
        twice.remove(trace);
        twice.remove(trace);
        assertEquals(new RelatedFactPrior(USUAL).expected(other), twice.expected(other), 1e-9);
        assertEquals(once.expected(other), copy.expected(other), 1e-9);
    }

    @Property(tries = 50)
    void aForgetfulChildIsExpectedToForgetTheNextFactSoonerToo(
            @ForAll @IntRange(min = 0, max = Trace.COUNT - 1) int next,
            @ForAll @DoubleRange(min = 0.01, max = 0.2) double more) {
        RelatedFactPrior kin = new RelatedFactPrior(USUAL);
        double before = kin.expected(next);
        for (Trace trace : Families.traces()) {
            if (trace.index() != next) {
                kin.put(trace.index(), new RelatedFactPrior(USUAL).expected(trace.index()) + more);
            }
        }
        assertTrue(kin.expected(next) > before + more / 2 && kin.expected(next) < before + more);
        assertTrue(kin.expected(ONE_SEVEN) < kin.expected(SIX_SEVEN));
    }
}
