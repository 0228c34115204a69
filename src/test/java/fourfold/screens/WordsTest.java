package fourfold.screens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Guards against a language with holes: a text that is missing, empty, or has other gaps than the English one. */
class WordsTest {
    private static final Pattern GAP = Pattern.compile("%(\\d+\\$)?[-#+ 0,(]*\\d*(\\.\\d+)?[a-zA-Z%]");

    private static Properties texts(String file) throws IOException {
        Properties texts = new Properties();
        try (Reader in = new InputStreamReader(
                Objects.requireNonNull(Words.class.getResourceAsStream(file)), StandardCharsets.UTF_8)) {
            texts.load(in);
        }
        return texts;
    }

    private static List<String> gaps(String text) {
        return GAP.matcher(text).results().map(MatchResult::group).sorted().toList();
    }

    @Test
    void eachLanguageSaysAllThatEnglishSays() throws IOException {
        Properties english = texts("words.properties");
        for (Locale other : Words.LANGUAGES.subList(1, Words.LANGUAGES.size())) {
            Properties texts = texts("words_" + other.getLanguage() + ".properties");
            assertEquals(new TreeSet<>(english.stringPropertyNames()), new TreeSet<>(texts.stringPropertyNames()));
            for (String key : english.stringPropertyNames()) {
                assertFalse(texts.getProperty(key).isBlank(), key);
                assertEquals(gaps(english.getProperty(key)), gaps(texts.getProperty(key)), key);
            }
        }
    }

    /** The names follow the usual abbreviations of each language; common practice, no source. */
    @Test
    void aDayIsWrittenInTheLanguagesOwnNames() {
        LocalDate day = LocalDate.of(2026, 9, 5);
        Words german = Words.of(Locale.GERMAN);
        assertEquals("5 Sep 2026", Words.english().date(day));
        assertEquals("Sat 5 Sep 2026", Words.english().namedDate(day));
        assertEquals("5. Sept 2026", german.date(day));
        assertEquals("Sa 5. Sept 2026", german.namedDate(day));
        for (Words words : List.of(Words.english(), german)) {
            assertEquals(12, words.say("date.months").split(" ", -1).length);
            assertEquals(7, words.say("date.days").split(" ", -1).length);
        }
    }

    @Test
    void aLanguageThatIsNotThereIsEnglishWhateverThisComputerSpeaks() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMAN);
            assertEquals("Who wants to practise?", Words.of(Locale.FRENCH).say("home.who"));
            assertEquals("Who wants to practise?", Words.english().say("home.who"));
            assertTrue(Words.of(Locale.GERMANY).say("home.who").startsWith("Wer"));
        } finally {
            Locale.setDefault(before);
        }
    }
}
