// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.outlook.EarlierForecast;
import fourfold.outlook.Projection;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a range of one number that is told as if it were two. */
class AheadWordsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            en | 24 | 24 | On 31 Oct 2026 it was foretold that 24 families would be fluent today. There are 32, more than foretold.
            en | 24 | 40 | On 31 Oct 2026 it was foretold that 24 to 40 families would be fluent today. There are 32, as foretold.
            de | 24 | 24 | Am 31. Okt. 2026 wurde vorhergesagt, dass heute 24 Familien flüssig sind. Es sind 32, mehr als vorhergesagt.
            de | 33 | 40 | Am 31. Okt. 2026 wurde vorhergesagt, dass heute 33 bis 40 Familien flüssig sind. Es sind 32, weniger als vorhergesagt.
            es | 24 | 24 | El 31 oct 2026 se previó que hoy serían fluidas 24 familias. Son 32, más de lo previsto.
            es | 24 | 40 | El 31 oct 2026 se previó que hoy serían fluidas de 24 a 40 familias. Son 32, como se previó.
            """)
    void aRangeWhoseEndsAreEqualIsOneNumber(String language, int low, int high, String told) {
        EarlierForecast earlier = new EarlierForecast(LocalDate.of(2026, 10, 31), low, high, 32);
        assertEquals(told, AheadWords.earlier(Words.of(Locale.forLanguageTag(language)), earlier));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            en | 0 | perhaps 22 Apr 2027
            en | 3 | perhaps 22 Apr 2027, between 22 Apr 2027 and 25 Apr 2027 in eight of ten cases
            de | 0 | vielleicht am 22. Apr. 2027
            es | 0 | quizá el 22 abr 2027
            """)
    void aRangeOfOneDayIsThatDay(String language, int days, String told) {
        LocalDate day = LocalDate.of(2027, 4, 22);
        Projection closed = new Projection(
                Projection.Outcome.WITHIN_REACH,
                Optional.of(day),
                Optional.of(day),
                Optional.of(day.plusDays(days)),
                day.plusDays(90),
                4);
        assertEquals(told, AheadWords.range(Words.of(Locale.forLanguageTag(language)), closed));
    }
}
