// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a guide whose table of keys is not that of the program. */
class GuideTest {
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void theTableOfKeysIsThatOfTheStairs(String language) throws IOException {
        Matcher told =
                Pattern.compile("(?m)^([a-z?])       \\S").matcher(GuidePage.text(Locale.forLanguageTag(language)));
        TreeSet<String> guide = new TreeSet<>();
        while (told.find()) {
            guide.add(told.group(1));
        }
        String source = Files.readString(Path.of("src/main/java/fourfold/screens/parent/GridPage.java"));
        // The letter that answers a question, yes in each language, is told where it is asked.
        Matcher acted =
                Pattern.compile("key\\.is\\('(.)'\\)").matcher(source.substring(source.indexOf("PageResult letter(")));
        TreeSet<String> program = new TreeSet<>();
        while (acted.find()) {
            program.add(acted.group(1));
        }
        assertEquals(program, guide);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void theGuideNamesEachLevelAsTheProgramDoes(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        String guide = GuidePage.text(words.language());
        for (String level : new String[] {"new", "acquiring", "accurate", "fluent", "lasting"}) {
            assertTrue(guide.contains(words.say("level." + level) + ":"), level);
        }
    }

    /** The numbers of the levels' rules, in the order of the table; the rules themselves stand at progress.FactMastery. */
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void theTableOfLevelsHasTheNumbersOfTheRules(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        String guide = GuidePage.text(words.language());
        assertEquals("", numbers(guide, words.say("level.acquiring")));
        assertEquals("4 5 2", numbers(guide, words.say("level.accurate")));
        assertEquals("5 9 10", numbers(guide, words.say("level.fluent")));
        assertEquals("3 7 28", numbers(guide, words.say("level.lasting")));
        // Quick by keys, by lines, on a timed page, on one without a time, out loud, and for slow hands.
        String quick = guide.substring(guide.indexOf(words.say("level.lasting") + ":"));
        quick = quick.substring(quick.indexOf("\n\n") + 2);
        quick = quick.substring(0, quick.indexOf("\n\n"));
        assertEquals(6, quick.lines().filter(l -> l.matches("[^.]{4,30}: .*")).count(), quick);
        String taken = words.number(0.8);
        assertTrue(quick.contains(taken), taken);
    }

    private static String numbers(String guide, String level) {
        String row =
                guide.lines().filter(l -> l.startsWith(level + ":")).findFirst().orElseThrow();
        return row.replaceAll("[^0-9]+", " ").strip();
    }

    /** Each part of a year has its place in the guide, and each page it names is called what the program calls it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            en | Summer, and coming back     | Two children | A new laptop       | A report    | In sentences | On paper  | slow hands:
            de | Sommer, und das Wiederkommen | Zwei Kinder  | Ein neuer Computer | Ein Bericht | In Sätzen    | Auf Papier | langsame Hände:
            es | El verano y la vuelta       | Dos niños    | Un equipo nuevo    | Un informe  | En frases    | En papel  | manos lentas:
            """)
    void theGuideCoversTheYearAndNamesEachPageAsItIsCalled(
            String language,
            String summer,
            String children,
            String laptop,
            String report,
            String sentences,
            String paper,
            String hands) {
        Words words = Words.of(Locale.forLanguageTag(language));
        String guide = GuidePage.text(words.language());
        told(words, guide, summer, "more.children");
        told(words, guide, children);
        told(words, guide, laptop, "more.care", "care.move", "home.bring");
        told(words, guide, report, "more.print", "print.report", "print.cando");
        told(words, guide, sentences, "more.household", "household.parents.sentences");
        told(words, guide, paper, "more.print", "more.paper", "more.aloud");
        told(words, guide, words.say("more.together"), "more.together");
        assertTrue(guide.contains("\n" + hands + " "), hands);
        assertTrue(guide.contains("fourfold calendar --off") && guide.contains("fourfold away cards"), guide);
    }

    private static void told(Words words, String guide, String heading, String... names) {
        int from = guide.indexOf("\n\n" + heading + "\n");
        assertTrue(from >= 0, heading);
        int to = guide.indexOf("\n\n", from + 2);
        String told = guide.substring(from + heading.length() + 3, to < 0 ? guide.length() : to);
        assertTrue(told.length() > 100, told);
        for (String name : names) {
            assertTrue(told.contains(words.say(name)), name + ": " + told);
        }
    }

    /** What the page of paper is entered with has its own signs: no second meaning of the mark. */
    @Test
    void theMarkOfFadingHasOneMeaning() throws IOException {
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java/fourfold"))) {
            List<String> drawn = new ArrayList<>();
            for (Path source :
                    sources.filter(p -> p.toString().endsWith(".java")).toList()) {
                if (Files.readString(source).contains("'~'")) {
                    drawn.add(source.getFileName().toString());
                }
            }
            assertEquals(List.of("Grid.java"), drawn);
        }
    }
}
