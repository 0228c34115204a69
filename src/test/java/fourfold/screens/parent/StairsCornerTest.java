// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.insight.Grid;
import fourfold.progress.Mastery;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a corner of the stairs whose words run out of the page in a language with longer ones. */
class StairsCornerTest {
    /** The columns beside the fifth step on a page of 80; the square takes two of the five rows. */
    private static final int ROOM = 37;

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void howAFamilyStandsIsToldWholeWithRoomLeftForHowOftenItWasRight(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        for (Mastery shown : Mastery.values()) {
            for (Mastery highest : Mastery.values()) {
                for (Grid.Mark mark : Grid.Mark.values()) {
                    assertTrue(told(words, shown, highest, EnumSet.of(mark)).size() <= 2);
                }
                told(words, shown, highest, EnumSet.allOf(Grid.Mark.class));
            }
        }
    }

    private static List<String> told(Words words, Mastery shown, Mastery highest, Set<Grid.Mark> marks) {
        Grid.Cell cell = new Grid.Cell(new Family(6, 7), shown, shown, shown, marks, 3, 4);
        String state = StairsPicture.state(words, cell, shown, highest);
        List<String> lines = Wrapping.lines(state, ROOM);
        assertEquals(state, String.join(" ", lines));
        assertTrue(lines.size() <= 4, state);
        return lines;
    }
}
