// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Fact;
import fourfold.facts.Family;
import fourfold.progress.Setting;
import fourfold.screens.TallDigits;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against what the edge of a screen cuts, in any language. */
class SmallScreenTest {
    @TempDir
    private Path folder;

    /** The parent's stairs of an only child, at 60 columns and 20 rows. */
    private Journey stairs(String language) {
        Path file = folder.resolve("family.db");
        CommandRun.of(file, "children", "--add", "Mina");
        return new Journey(file, Instant.parse("2026-11-25T16:00:00Z"), 60, 20, true)
                .speak(language)
                .keys("Down Down Enter");
    }

    /** All that is on the screen as one line. */
    private static String all(Journey journey) {
        return journey.picture().replaceAll("\\s+", " ");
    }

    private static void assertSaid(String text, Journey journey) {
        assertTrue(all(journey).contains(text.strip().replaceAll("\\s+", " ")), text + "\n" + journey.picture());
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void eachSettingIsExplainedInFullBesideItsKeys(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        try (Journey journey = stairs(language).keys("m 8")) {
            for (Setting setting : Setting.values()) {
                assertSaid(words.say("settings." + setting.key() + ".help"), journey);
                assertSaid(words.value(setting, setting.usual()) + " ►", journey);
                assertSaid(words.say("settings.foot"), journey);
                journey.keys("Down");
            }
            assertSaid(words.say("settings.order.help"), journey);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void whatAKeyDidIsSaidInFull(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        try (Journey journey = stairs(language).keys("t t")) {
            journey.keys("f");
            assertSaid(words.say("steer.focus", ""), journey);
            journey.keys("u h");
            assertSaid(words.say("steer.hold", ""), journey);
            journey.keys("u k Down Down Down Down Right Enter t");
            assertSaid(words.say("command.taught.divide", 2), journey);
            int others = Pattern.compile(words.say("calendar.progress"), Pattern.LITERAL)
                    .matcher(all(journey))
                    .results()
                    .toList()
                    .size();
            assertEquals(19, others, journey.picture());
            journey.keys("Esc m 4");
            assertSaid(words.say("paper.none"), journey);
        }
    }

    /** What is said of each line of the calendar stands above its keys, and neither is written over the other. */
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void whatALineOfTheCalendarMeansIsSaidInFullAboveItsKeys(String language) {
        Words words = Words.of(Locale.forLanguageTag(language));
        try (Journey journey = stairs(language).keys("k")) {
            assertSaid(words.say("calendar.help.begin"), journey);
            for (int line = 0; line < 14; line++) {
                assertSaid(words.say("calendar.foot"), journey);
                journey.keys("Down");
            }
        }
    }

    /** From 118 columns and 37 rows on they stand in tall digits, and must not be cut there. */
    @ParameterizedTest
    @CsvSource({"118, 37", "120, 40", "200, 60"})
    void theTwoFactsOfTheFirstPageAreWhole(int columns, int rows) {
        Words words = Words.of(Locale.ENGLISH);
        Path file = folder.resolve("family.db");
        CommandRun.of(file, "children", "--add", "Mina");
        try (Journey journey = new Journey(file, Instant.parse("2026-11-25T16:00:00Z"), columns, rows, true)) {
            String picture = journey.picture();
            for (int place : List.of(0, 3)) {
                Fact fact = Family.of(7, 8).facts().get(place);
                for (String row : TallDigits.SMALL.rows(words.fact(fact), new Picture(columns, rows, true))) {
                    assertTrue(picture.contains(row.stripTrailing()), picture);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es"})
    void theFactsOfAFamilyDoNotRunIntoTheirNumbers(String language) {
        try (Journey journey = stairs(language).keys("Down Down Down Down Down Down Down Down Down Enter")) {
            assertTrue(
                    Pattern.compile("10 [×·] \\d +– ")
                            .matcher(journey.picture())
                            .find(),
                    journey.picture());
        }
    }
}
