// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Question;
import fourfold.progress.WrongAnswer;
import fourfold.terminal.Picture;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Properties;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against sentences that are too long or too hard for a child of eight. */
class ChildsWordsTest {
    /** Texts that a child reads in a drill; what is for a grown-up is not among them. */
    private static final Pattern CHILDS =
            Pattern.compile("(minutes|drill|note|meet|picture|pause|handsoff|minute|summary|mixup|way)\\..*");

    private static final Pattern NOT_A_SENTENCE =
            Pattern.compile(".*\\.foot.*|drill\\.(elsewhere|lost|notkept).*|pause\\.(on|stop|keys).*|minutes\\.foot");

    /** Kincaid, Fishburne, Rogers and Chissom 1975, Research Branch Report 8-75, Naval Technical Training Command. */
    private static double grade(List<String> sentences) {
        List<String> words = sentences.stream()
                .flatMap(s -> Arrays.stream(s.split("[^A-Za-z']+")))
                .filter(w -> !w.isEmpty())
                .toList();
        double syllables = words.stream().mapToInt(ChildsWordsTest::syllables).sum();
        return 0.39 * words.size() / sentences.size() + 11.8 * syllables / words.size() - 15.59;
    }

    /** Groups of vowels; a silent e at the end is none. Counted so since no list of syllables comes along. */
    private static int syllables(String word) {
        String lower = word.toLowerCase(Locale.ROOT).replaceAll("(?<=[^aeioul])e$", "");
        return Math.max(
                1, (int) Pattern.compile("[aeiouy]+").matcher(lower).results().count());
    }

    private static List<String> sentences() throws IOException {
        Properties texts = new Properties();
        try (Reader in = new InputStreamReader(
                Objects.requireNonNull(Words.class.getResourceAsStream("words.properties")), StandardCharsets.UTF_8)) {
            texts.load(in);
        }
        return new TreeMap<>(texts)
                .entrySet().stream()
                        .filter(e -> CHILDS.matcher((String) e.getKey()).matches()
                                && !NOT_A_SENTENCE.matcher((String) e.getKey()).matches())
                        .flatMap(e -> Arrays.stream(((String) e.getValue())
                                .replaceAll("%\\d?\\$?s", "six")
                                .split("(?<=[.?!])\\s+")))
                        .filter(s -> !s.isBlank())
                        .collect(Collectors.toList());
    }

    /** Three words of one syllable each: 0.39 x 3 + 11.8 x 1 - 15.59, worked out by hand. */
    @Test
    void theFormulaIsCountedAsItIsPublished() {
        assertEquals(-2.62, grade(List.of("Take your time.")), 1e-9);
        assertEquals(3, syllables("division") - 0);
        assertEquals(1, syllables("type"));
        assertEquals(2, syllables("number"));
    }

    @Test
    void theChildsWordsAreForTheSecondYearOfSchool() throws IOException {
        List<String> sentences = sentences();
        assertTrue(sentences.size() > 60, "sentences: " + sentences.size());
        assertTrue(grade(sentences) <= 2, "grade " + grade(sentences));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void whatIsSaidOfAnErrorFitsOnOneLineOfTheSmallestPage(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        for (Question question : Families.questions()) {
            for (int typed = 0; typed <= 100; typed++) {
                if (typed != question.expected()) {
                    String said = MixupWords.told(words, WrongAnswer.of(question, typed), words::asked);
                    assertTrue(Picture.columns(said) <= 60, said);
                }
            }
        }
    }

    @Test
    void eachKindOfErrorIsToldAsWhatHappened() {
        Words words = Words.english();
        assertEquals(
                "8 × 7 is the next one up: 56. You were asked 8 × 6.",
                MixupWords.told(words, WrongAnswer.of(Question.product(8, 6), 56), words::asked));
        assertEquals(
                "54 is 6 × 9. You were asked 7 × 8.",
                MixupWords.told(words, WrongAnswer.of(Question.product(7, 8), 54), words::asked));
        assertEquals(
                "That is 8 plus 6. You were asked 8 × 6.",
                MixupWords.told(words, WrongAnswer.of(Question.product(8, 6), 14), words::asked));
        assertEquals(
                "9 × 7 is 63. Here you have 56.",
                MixupWords.told(
                        words, WrongAnswer.of(Question.quotient(fourfold.facts.Family.of(7, 8), 7), 9), words::asked));
        assertEquals(
                "You have the right digits. They changed places.",
                MixupWords.told(words, WrongAnswer.of(Question.product(4, 7), 82), words::asked));
    }
}
