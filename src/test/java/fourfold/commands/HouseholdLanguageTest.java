// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import fourfold.store.Store;
import fourfold.terminal.Theme;
import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards the language that a household set: kept, told, taken back, and between the variable and the system. */
class HouseholdLanguageTest {
    @TempDir
    private Path folder;

    @Test
    void theVariableComesBeforeTheHouseholdAndTheHouseholdBeforeTheSystem() {
        Path file = Practised.once(folder);
        assertTrue(drill(file, Map.of("LANG", "es_ES.UTF-8")).contains("Hola, Mina"));
        assertEquals(0, CommandRun.of(file, "settings", "--language", "de").code());
        assertTrue(drill(file, Map.of("LANG", "es_ES.UTF-8")).contains("Hallo Mina"));
        assertTrue(drill(file, Map.of("LANG", "es_ES.UTF-8", "FOURFOLD_LANGUAGE", "en"))
                .contains("Hello Mina"));
        assertEquals(0, CommandRun.of(file, "settings", "--language", "system").code());
        assertTrue(drill(file, Map.of("LANG", "es_ES.UTF-8")).contains("Hola, Mina"));
    }

    @Test
    void theSettingsTellTheLanguage() {
        Path file = Practised.once(folder);
        assertTrue(CommandRun.of(file, "settings").out().contains("language   system"));
        CommandRun set = CommandRun.of(file, "settings", "--language", "es");
        assertTrue(set.out().contains("language   es") && set.out().contains("minutes"), set.out());
    }

    @Test
    void aLanguageIsSetWhereNobodyOrSeveralPractise() {
        Path file = Practised.children(folder, "Mina", "Noa");
        CommandRun run = CommandRun.of(file, "settings", "--language", "de");
        assertEquals(0, run.code(), run.err());
        assertEquals(
                "language   de\ntheme      system\nmotion     on\npages      system\nbrowser    on\nparents    drawn",
                run.out().strip());
    }

    @Test
    void theFolderOfPagesAndTheBrowserAreSetForAllAndTakenBack() throws java.io.IOException {
        Path file = Practised.once(folder);
        Path pages = folder.resolve("our pages");
        CommandRun set = CommandRun.of(file, "settings", "--pages", pages.toString(), "--browser", "off");
        assertTrue(set.out().contains("pages      " + pages), set.out() + set.err());
        assertTrue(set.out().contains("browser    off"), set.out());
        CommandRun made = CommandRun.of(file, "print", "practice");
        assertTrue(made.out().startsWith("Made: " + pages), made.out() + made.err());
        try (var all = java.nio.file.Files.list(pages)) {
            assertEquals(1, all.count());
        }
        assertEquals(2, CommandRun.of(file, "settings", "--browser", "maybe").code());
        CommandRun back = CommandRun.of(file, "settings", "--pages", "system", "--browser", "on");
        assertTrue(
                back.out().contains("pages      system") && back.out().contains("browser    on\nparents    drawn"),
                back.out());
    }

    @Test
    void theColoursAreSetForAllAndTakenBack() {
        Path file = Practised.children(folder, "Mina", "Noa");
        CommandRun dark = CommandRun.of(file, "settings", "--theme", "dark");
        assertTrue(dark.out().contains("theme      dark"), dark.out() + dark.err());
        CommandRun unknown = CommandRun.of(file, "settings", "--theme", "pink");
        assertEquals(2, unknown.code());
        assertTrue(unknown.err().contains("dark, light, system, not pink"), unknown.err());
        assertTrue(CommandRun.of(file, "settings", "--theme", "system").out().contains("theme      system"));
    }

    @Test
    void aParentSetsLanguageColoursAndMotionForAllOnAPageToo() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, CommandRun.NOW, 60, 20, true)) {
            journey.keys("3 m Up Up Enter");
            assertTrue(journey.picture().contains("► Language              ◄ as the system says ►"), journey.picture());
            journey.keys("Left Right Right");
            assertTrue(journey.picture().contains("◄ Deutsch ►"), journey.picture());
            assertTrue(journey.picture().contains("from the next start on"), journey.picture());
            assertEquals(Optional.of("de"), journey.home().settings().language());
            journey.keys("Right Right Right Down Right Right Down Right Right");
            assertEquals(Optional.of("es"), journey.home().settings().language());
            assertEquals(Optional.of(Theme.DARK), journey.home().settings().theme());
            assertTrue(journey.home().settings().isStill());
            journey.keys("Up Left Left Down Left");
            assertEquals(Optional.empty(), journey.home().settings().theme());
            assertFalse(journey.home().settings().isStill());
            journey.keys("Esc Enter");
            assertTrue(journey.picture().contains("◄ Español ►"), journey.picture());
        }
    }

    /** The first stone of a day takes its time unless it was set that nothing moves. */
    @Test
    void atTheEndOfADrillNothingMovesWhereItWasSetSo() {
        Path file = Practised.children(folder, "Mina");
        try (Journey journey = new Journey(file, CommandRun.NOW, 80, 24, true)) {
            String moving = ending(journey);
            assertFalse(moving.contains("▄"), moving);
            assertTrue(journey.rest(1300).picture().contains("▄"), journey.picture());
            assertFalse(moving.equals(journey.picture()));
        }
        assertTrue(CommandRun.of(file, "settings", "--motion", "still").out().contains("motion     still"));
        try (Journey journey = new Journey(file, CommandRun.NOW.plus(Duration.ofDays(1)), 80, 24, true)) {
            String still = ending(journey);
            assertTrue(still.contains("new stone"), still);
            assertEquals(still, journey.rest(1300).picture());
        }
        CommandRun unknown = CommandRun.of(file, "settings", "--motion", "off");
        assertEquals(2, unknown.code());
        assertTrue(unknown.err().contains("on, still, not off"), unknown.err());
    }

    /** The picture of a drill's end as it appears. */
    private static String ending(Journey journey) {
        journey.keys("1 Enter").rest(100);
        for (int i = 0; i < 40; i++) {
            journey.give(0);
        }
        return journey.keys("Esc Esc").picture();
    }

    @Test
    void aLanguageThatHasNoWordsIsRefusedAndNothingIsChanged() {
        Path file = Practised.once(folder);
        for (String unknown : new String[] {"xx", "", "de_AT", "../de", "DE"}) {
            CommandRun run = CommandRun.of(file, "settings", "--language", unknown);
            assertEquals(2, run.code(), unknown);
            assertTrue(run.err().contains("there is no language \"" + unknown + "\""), run.err());
        }
        try (Store store = Store.open(file)) {
            assertTrue(store.homeSetting("language").isEmpty());
        }
    }

    /** What a drill says to a child who is gone at once. */
    private static String drill(Path file, Map<String, String> variables) {
        StringWriter out = new StringWriter();
        Environment usual = CommandRun.world(
                file,
                true,
                new BufferedReader(new StringReader("")),
                out,
                new StringWriter(),
                Environment::systemClock);
        Environment world = new Environment(
                usual.in(),
                usual.out(),
                usual.data(),
                usual.err(),
                variables,
                usual.home(),
                usual.systemName(),
                usual.unicode(),
                usual.clock());
        Fourfold.run(world, "--store", file.toString(), "drill", "--plain");
        return out.toString();
    }
}
