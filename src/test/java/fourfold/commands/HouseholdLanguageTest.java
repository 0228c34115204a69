package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.home.Environment;
import fourfold.store.Store;
import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Map;
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
        assertEquals("language   de\ntheme      system", run.out().strip());
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
