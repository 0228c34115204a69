package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
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
}
