// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.words.Words;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against names that run from right to left and shove about what stands beside them. */
class BidiTextTest {
    /** Hebrew dalet, nun, he: a name of three letters, written with escapes so that this file keeps its own order. */
    private static final String HEBREW = "\u05d3\u05e0\u05d4";

    private static final String TURNED = "\u05d4\u05e0\u05d3";

    @Test
    void whatRunsFromLeftToRightStaysAsItIs() {
        assertEquals("Hello Mina (8).", BidiText.order("Hello Mina (8)."));
    }

    @Test
    void aNameIsTurnedInPlaceAndNumbersBesideItStay() {
        assertEquals(
                "Hello " + TURNED + ". 5 minutes", BidiText.order("Hello " + Words.isolated(HEBREW) + ". 5 minutes"));
        // Without the isolate the number would be drawn to the left of the name (rule W2 and N1 of the annex).
        assertEquals(TURNED + " 5", BidiText.order(Words.isolated(HEBREW) + " 5"));
    }

    @Test
    void digitsAndBracketsInsideANameKeepTheirSense() {
        assertEquals("(12) " + TURNED, BidiText.order(Words.isolated(HEBREW + " (12)")));
    }

    @Test
    void isolatesTakeNoRoom() {
        assertEquals(3, Picture.columns(Words.isolated(HEBREW)));
        Picture picture = new Picture(20, 1, true);
        picture.text(0, 0, Words.isolated(HEBREW) + "!");
        assertEquals(TURNED + "!", picture.row(0));
    }

    /** Arabic with marks and a Latin part, Hebrew with points, mixed: the row keeps its width and its other cells. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\u0645\u064e\u0631\u064a\u0645",
                "\u05e9\u05b8\u05c1\u05e8\u05d4",
                "\u0633\u0627\u0631\u0629 Mina 3"
            })
    void aNameBreaksNoRow(String name) {
        Picture picture = new Picture(60, 3, true);
        picture.centred(0, "Hello " + Words.isolated(name) + ", 12 × 3.", Ink.PLAIN);
        picture.right(1, "|", Ink.PLAIN);
        String row = picture.row(0);
        assertEquals(List.of(true, true), List.of(row.strip().startsWith("Hello "), row.endsWith(", 12 × 3.")), row);
        assertEquals(60, picture.row(1).length());
    }
}
