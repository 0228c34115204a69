// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a table without its five sentences in a language, against a wrong fact in them, and one sentence told twice. */
class TeachingNotesTest {
    private static final Pattern PRODUCT = Pattern.compile("(\\d+) [×·] (\\d+) = (\\d+)");
    private static final Pattern QUOTIENT = Pattern.compile("(\\d+) [÷:] (\\d+) = (\\d+)");

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void everyTableHasFiveSentencesAndTheirFactsAreTrue(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        Set<String> all = new HashSet<>();
        for (int table = 1; table <= 10; table++) {
            List<String> lines = TeachingNotes.of(words, table);
            List<String> note = lines.subList(2, lines.size() - 2);
            assertEquals(5, note.size(), language + " " + table);
            assertEquals(words.say("note.source"), lines.get(lines.size() - 1));
            for (String sentence : note) {
                assertTrue(sentence.endsWith(".") && all.add(sentence), sentence);
                for (Matcher m = PRODUCT.matcher(sentence); m.find(); ) {
                    assertEquals(number(m, 3), number(m, 1) * number(m, 2), sentence);
                }
                for (Matcher m = QUOTIENT.matcher(sentence); m.find(); ) {
                    assertEquals(number(m, 1), number(m, 3) * number(m, 2), sentence);
                }
            }
            String fact = table + " [×·] ";
            assertTrue(Pattern.compile("\\b" + fact).matcher(note.get(1)).find(), note.get(1));
            // A way from known facts leads to a fact of the table.
            assertTrue(
                    Pattern.compile("\\b" + table + "\\b").matcher(note.get(3)).find(), note.get(3));
        }
    }

    private static int number(Matcher m, int group) {
        return Integer.parseInt(m.group(group));
    }
}
