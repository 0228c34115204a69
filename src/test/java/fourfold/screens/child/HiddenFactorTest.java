// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Question;
import fourfold.screens.DigitReader;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a hole in the middle of a question with a missing number: 6 × ?   = 42. */
class HiddenFactorTest {
    private static final MissingFactor SIX_TIMES = new MissingFactor(Question.quotient(Family.of(6, 7), 6));

    private static Picture drawn(int columns, int rows, boolean unicode, String typed) {
        Picture picture = new Picture(columns, rows, unicode);
        new Shelves(picture, Words.english()).ask(SIX_TIMES, typed, Ink.PLAIN, Ink.STRONG);
        return picture;
    }

    @ParameterizedTest
    @CsvSource({"60, 20, true", "80, 24, true", "120, 40, true", "200, 60, true", "60, 20, false", "80, 24, false"})
    void theSignsAreEvenlySpacedAndTheProductStaysWhereItIs(int columns, int rows, boolean unicode) {
        Picture asked = drawn(columns, rows, unicode, "");
        assertEquals("6×?=42", DigitReader.read(asked.toString()).orElseThrow());
        for (String typed : new String[] {"7", "10"}) {
            Picture answered = drawn(columns, rows, unicode, typed);
            assertEquals(
                    "6×" + typed + "=42", DigitReader.read(answered.toString()).orElseThrow());
            assertEquals(lastInk(asked), lastInk(answered), "the product has moved");
        }
        assertTrue(widestHole(asked) <= widestHole(drawn(columns, rows, unicode, "10")) * 3, asked.toString());
    }

    /** How many empty columns lie side by side between the first and the last that are not. */
    private static int widestHole(Picture picture) {
        int widest = 0;
        int hole = 0;
        for (int x = firstInk(picture); x < lastInk(picture); x++) {
            hole = isInked(picture, x) ? 0 : hole + 1;
            widest = Math.max(widest, hole);
        }
        return widest;
    }

    private static int firstInk(Picture picture) {
        return IntStream.range(0, picture.width())
                .filter(x -> isInked(picture, x))
                .findFirst()
                .orElseThrow();
    }

    private static int lastInk(Picture picture) {
        OptionalInt last = IntStream.range(0, picture.width())
                .filter(x -> isInked(picture, x))
                .max();
        return last.orElseThrow();
    }

    /** Apart from the line on which the answer rests. */
    private static boolean isInked(Picture picture, int x) {
        return IntStream.range(0, picture.height())
                .mapToObj(picture::row)
                .anyMatch(row -> x < row.length() && " ─-".indexOf(row.charAt(x)) < 0);
    }
}
