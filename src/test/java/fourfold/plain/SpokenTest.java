// SPDX-License-Identifier: Apache-2.0
package fourfold.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import fourfold.words.TeachingNotes;
import fourfold.words.Words;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a sign that whoever hears a page is left alone with. */
class SpokenTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            en | Quick means: within 3 s. To change it       | Quick means: within 3 seconds. To change it.
            en | From 5 × 8 = 40 and 2 × 8 = 16 comes 7 × 8. | From 5 times 8 is 40 and 2 times 8 is 16 comes 7 times 8.
            en | Until then 7 × ? = 56. t taught today       | Until then 7 times what is 56? t taught today.
            en | 56 ÷ 8 = 7                                  | 56 divided by 8 is 7.
            de | Aus 5 · 8 = 40 und 56 : 8 = 7               | Aus 5 mal 8 ist 40 und 56 geteilt durch 8 ist 7.
            de | Schnell heißt: in höchstens 3 s.            | Schnell heißt: in höchstens 3 Sekunden.
            es | De 5 × 8 = 40, en 3 s                       | De 5 por 8 es 40, en 3 segundos.
            en | 3 stones, 4 steps                           | 3 stones, 4 steps.
            """)
    void signsAndUnitsAreSaidInWords(String language, String drawn, String heard) {
        assertEquals(heard, Spoken.heard(Words.of(Locale.forLanguageTag(language)), drawn));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void aNoteToTeachByIsHeardWithoutASign(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        for (int table = 1; table <= 10; table++) {
            for (String line : TeachingNotes.of(words, table)) {
                String heard = Spoken.heard(words, line);
                assertFalse(heard.matches(".*[×÷·=].*|.*\\d : \\d.*"), heard);
            }
        }
    }
}
