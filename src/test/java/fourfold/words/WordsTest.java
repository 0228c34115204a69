// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.progress.Setting;
import fourfold.screens.parent.GuidePage;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Guards against a language with holes: a text that is missing, empty, has other gaps than the English one, or was left
 * in English.
 */
class WordsTest {
    private static final Pattern GAP = Pattern.compile("%(\\d+\\$)?[-#+ 0,(]*\\d*(\\.\\d+)?[a-zA-Z%]");

    /** Texts that may be as in English: names of keys, letters of levels, signs, units, and words that are the same. */
    private static final Set<String> ALIKE = Set.of(
            "Enter",
            "TEXT",
            "Esc",
            "-",
            "*",
            "x",
            "p",
            "A",
            "N",
            "F",
            "×",
            "÷",
            "%s s",
            "%s d",
            "%s min",
            "%d %s %d",
            "Pause",
            "no",
            "NAME");

    private static Properties texts(String file) throws IOException {
        Properties texts = new Properties();
        try (Reader in = new InputStreamReader(
                Objects.requireNonNull(Words.class.getResourceAsStream(file)), StandardCharsets.UTF_8)) {
            texts.load(in);
        }
        return texts;
    }

    /** The languages that have a file of texts, but for English. */
    private static List<String> languages() throws IOException {
        Pattern named = Pattern.compile("words_(.+)\\.properties");
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/fourfold/words"))) {
            return files.map(file -> named.matcher(file.getFileName().toString()))
                    .filter(Matcher::matches)
                    .map(file -> file.group(1))
                    .sorted()
                    .toList();
        }
    }

    private static List<String> gaps(String text) {
        return GAP.matcher(text).results().map(MatchResult::group).sorted().toList();
    }

    @Test
    void eachLanguageSaysAllThatEnglishSays() throws IOException {
        for (String bundle : List.of("words", "help")) {
            eachLanguageSaysAllOf(bundle);
        }
    }

    private static void eachLanguageSaysAllOf(String bundle) throws IOException {
        Properties english = texts(bundle + ".properties");
        for (String language : languages()) {
            Properties texts = texts(bundle + "_" + language + ".properties");
            assertEquals(new TreeSet<>(english.stringPropertyNames()), new TreeSet<>(texts.stringPropertyNames()));
            for (String key : english.stringPropertyNames()) {
                assertFalse(texts.getProperty(key).isBlank(), key);
                assertEquals(gaps(english.getProperty(key)), gaps(texts.getProperty(key)), key);
                boolean alike = english.getProperty(key).equals(texts.getProperty(key));
                boolean gapsAlone =
                        GAP.matcher(texts.getProperty(key)).replaceAll("").isBlank();
                assertTrue(!alike || gapsAlone || ALIKE.contains(texts.getProperty(key)), key);
            }
        }
    }

    @Test
    void aLanguageIsAddedByItsFourFilesAlone() throws IOException {
        assertTrue(languages().containsAll(List.of("de", "es")), languages().toString());
        for (String language : languages()) {
            Locale spoken = Locale.forLanguageTag(language);
            assertEquals(spoken, Words.of(spoken).language());
            assertFalse(GuidePage.text(spoken).isBlank(), language);
            assertEquals(
                    TeachingNotes.of(Words.english(), 7).size(),
                    TeachingNotes.of(Words.of(spoken), 7).size(),
                    language);
            try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
                for (Path source : sources.filter(Files::isRegularFile).toList()) {
                    assertFalse(Files.readString(source).contains('"' + language + '"'), source.toString());
                }
            }
        }
    }

    /** The names follow the usual abbreviations of each language; common practice, no source. */
    @Test
    void oneDayOfTheWeekIsOneAndNoTextStandsTwiceInALanguage() throws IOException {
        for (String language : List.of("en/1 day/2 days", "de/1 Tag/2 Tage", "es/1 día/2 días")) {
            String[] parts = language.split("/");
            Words words = Words.of(Locale.forLanguageTag(parts[0]));
            assertEquals(parts[1], words.value(Setting.DAYS, "1"));
            assertEquals(parts[2], words.value(Setting.DAYS, "2"));
        }
        for (String file : List.of("words", "words_de", "words_es")) {
            List<String> keys =
                    Files.readAllLines(Path.of("src/main/resources/fourfold/words/" + file + ".properties")).stream()
                            .filter(line -> line.matches("[a-zA-Z0-9._-]+=.*"))
                            .map(line -> line.substring(0, line.indexOf('=')))
                            .toList();
            TreeSet<String> once = new TreeSet<>();
            assertEquals(List.of(), keys.stream().filter(key -> !once.add(key)).toList(), file);
        }
    }

    @Test
    void aDayIsWrittenInTheLanguagesOwnNames() {
        LocalDate day = LocalDate.of(2026, 9, 5);
        Words german = Words.of(Locale.GERMAN);
        assertEquals("5 Sep 2026", Words.english().date(day));
        assertEquals("Sat 5 Sep 2026", Words.english().namedDate(day));
        assertEquals("5. Sept. 2026", german.date(day));
        assertEquals("Sa 5. Sept. 2026", german.namedDate(day));
        Words spanish = Words.of(Locale.forLanguageTag("es-MX"));
        assertEquals("sáb 5 sept 2026", spanish.namedDate(day));
        for (Words words : List.of(Words.english(), german, spanish)) {
            assertEquals(12, words.say("date.months").split(" ", -1).length);
            // Unicode's locale data (CLDR), which Java brings along, abbreviate so; Java says Sept for British English.
            if (!words.language().equals(Locale.ENGLISH)) {
                DateTimeFormatter months = DateTimeFormatter.ofPattern("MMM", words.language());
                assertEquals(
                        words.say("date.months"),
                        Stream.of(Month.values()).map(months::format).collect(Collectors.joining(" ")));
            }
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
