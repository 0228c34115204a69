// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.facts.Families;
import fourfold.facts.Family;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against facts that are mixed up easily and still follow each other, and against free choices that are not free. */
class RailsAndDiceTest {
    /** They share a factor, and lie within twice that factor of each other. */
    @ParameterizedTest
    @CsvSource({
        // 56 and 49, one seven away; 56 and 70, two sevens; 56 and 77 would be three.
        "7x8, 7x7, true",
        "7x8, 7x9, true",
        "7x8, 7x10, true",
        "7x8, 6x7, true",
        "7x8, 5x7, false",
        // By the eights: 56 and 48, 56 and 40, not 56 and 32.
        "7x8, 6x8, true",
        "7x8, 5x8, true",
        "7x8, 4x8, false",
        // 54 is near 56 and shares no factor with it.
        "7x8, 6x9, false",
        "7x8, 7x8, false",
        "1x1, 1x3, true",
        "1x1, 1x4, false",
        "2x9, 9x9, false",
        "2x9, 4x9, true",
        "2x9, 2x7, true",
        "2x9, 2x6, false"
    })
    void neighboursShareAFactorAndAreAtMostTwoStepsApart(String one, String other, boolean neighbours) {
        assertEquals(neighbours, Rails.areNeighbours(Family.parse(one), Family.parse(other)));
        assertEquals(neighbours, Rails.areNeighbours(Family.parse(other), Family.parse(one)));
    }

    /** Counted apart, from what a child sees: a row or a column of the table, one or two cells along. */
    @Test
    void theyAreTheCellsOneOrTwoStepsAlongInTheTable() {
        for (Family a : Families.all()) {
            for (Family b : Families.all()) {
                boolean along = false;
                for (int n = 1; n <= 10; n++) {
                    if (a.contains(n) && b.contains(n) && !a.equals(b)) {
                        along |= Math.abs(a.partnerOf(n) - b.partnerOf(n)) <= 2;
                    }
                }
                assertEquals(along, Rails.areNeighbours(a, b), a + " and " + b);
            }
        }
    }

    /** The JDK's own generator has the same finishing steps, and its numbers come in the order of their places. */
    @Property(tries = 50)
    void theDiceAreThoseOfTheGeneratorTheyAreTakenFrom(@ForAll long seed) {
        SplittableRandom library = new SplittableRandom(seed);
        for (int place = 0; place < 20; place++) {
            assertEquals(library.nextLong(), Mixing.of(seed, place));
        }
    }
}
