// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Fact;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a fact that a child has to read in two halves. */
class WrappedFactsTest {
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void noFactIsBrokenOverLinesAtAnyWidth(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        for (int width = 18; width <= 60; width++) {
            for (Family family : Families.all()) {
                String names = words.say("summary.again", words.names(List.of(family, family, family, family), 3));
                assertEquals(3, whole(words.name(family), Wrapping.lines(names, width)), names + " at " + width);
                for (Fact fact : family.facts()) {
                    String told = words.say("summary.read", words.fact(fact));
                    assertEquals(1, whole(words.fact(fact), Wrapping.lines(told, width)), told + " at " + width);
                }
            }
        }
    }

    @Test
    void aNameWithoutABlankIsBrokenRatherThanCut() {
        List<String> lines = Wrapping.lines("Neu in /tmp/übungen/家家家/other.db: 2 Kinder", 10);
        assertEquals(
                "Neuin/tmp/übungen/家家家/other.db:2Kinder", String.join("", lines).replace(" ", ""));
        assertTrue(lines.stream().allMatch(l -> Picture.columns(l) <= 10), lines::toString);
        assertEquals(List.of("家", "家"), Wrapping.lines("家家", 1));
    }

    /** How often the fact stands whole in a line. */
    private static int whole(String fact, List<String> lines) {
        String all = lines.stream().collect(Collectors.joining("\n"));
        int count = all.split(java.util.regex.Pattern.quote(fact), -1).length - 1;
        assertTrue(count > 0, all);
        return count;
    }
}
