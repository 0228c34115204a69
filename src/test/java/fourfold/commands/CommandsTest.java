// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import fourfold.facts.Family;
import fourfold.home.Home;
import fourfold.log.ParentAction;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against commands that print something else than the file holds, or keep something else than was asked. */
class CommandsTest {
    @TempDir
    private Path folder;

    private static String ok(CommandRun run) {
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return run.out();
    }

    private static List<String> actions(Path file) {
        return Rows.column(file, "SELECT kind || ' ' || detail FROM act ORDER BY nr");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "drill", "grid", "family", "focus", "hold", "reset", "children", "export", "export answers"})
    void everyCommandHasHelpThatNamesTheSameOptions(String command) {
        Path nowhere = folder.resolve("never-made.db");
        String help = ok(CommandRun.of(nowhere, (command + " --help").strip().split(" ")));
        assertTrue(help.startsWith(("Usage: fourfold " + command).strip()), help);
        for (String option : List.of("--child=NAME", "--store=FILE", "--demo", "--debug", "--help", "--version")) {
            assertTrue(help.contains(option), option + " is missing in:\n" + help);
        }
        assertFalse(help.contains("\u001b"), help);
        assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
        assertFalse(nowhere.toFile().exists());
    }

    @ParameterizedTest
    @ValueSource(strings = {"grid", "family 6x7", "focus 6x7", "hold 6x7", "reset 6x7", "children", "export answers"})
    void childAndStoreStandBeforeOrAfterTheCommand(String command) {
        Path file = Practised.children(folder, "Mina", "Zoë");
        Path elsewhere = folder.resolve("never-made.db");
        String options = " --child Zoë --store " + file + " ";
        String before = ok(CommandRun.of(elsewhere, (options + command).strip().split(" ")));
        String after = ok(CommandRun.of(elsewhere, (command + options).strip().split(" ")));
        assertEquals(before, after);
        assertFalse(elsewhere.toFile().exists());
        assertFalse(before.contains("Mina"), before);
    }

    @Test
    void childrenAreAddedAndListedInOrder() {
        Path file = folder.resolve("family.db");
        assertEquals(
                List.of("Mina"),
                ok(CommandRun.of(file, "children", "--add", " Mina ")).lines().toList());
        assertEquals(
                List.of("Mina", "李小龙"),
                ok(CommandRun.of(file, "children", "--add", "李小龙")).lines().toList());
        assertEquals(
                List.of("Mina", "李小龙"),
                ok(CommandRun.of(file, "children")).lines().toList());
        assertEquals(
                List.of("李小龙"),
                ok(CommandRun.of(file, "children", "--child", "李小龙")).lines().toList());
    }

    @Test
    void theGridIsAStaircaseOfShades() {
        List<String> grid =
                ok(CommandRun.of(Practised.once(folder), "grid")).lines().toList();
        assertEquals("Mina: 0 of 55 families fluent", grid.get(0));
        assertEquals("  1    1·", grid.get(2));
        assertEquals("  7    7·    14·    21·    28·    35·    42▄    49·", grid.get(8));
        assertEquals(
                10, Stream.of(grid.get(11).split("·")).count() + (grid.get(11).endsWith("·") ? 0 : 1));
        assertEquals("     ·  new 54   ▄  acquiring 1   ▄▄ accurate 0   █▄ fluent 0   ██ lasting 0", grid.get(13));
    }

    @Test
    void withoutUnicodeTheGridAndAFamilyAreAscii() {
        Path file = Practised.once(folder);
        String grid = ok(CommandRun.ascii(file, "grid"));
        assertTrue(grid.contains("  7    7.    14.    21.    28.    35.    42:    49."), grid);
        assertTrue(grid.contains(".  new 54   :  acquiring 1   =  accurate 0   #  fluent 0   @  lasting 0"), grid);
        String family = ok(CommandRun.ascii(file, "family", "7x6"));
        assertTrue(family.contains("6 x 7, 7 x 6") && family.contains("42 / 7"), family);
        assertTrue(StandardCharsets.US_ASCII.newEncoder().canEncode(grid + family));
    }

    @Test
    void focusAndHoldAreMarkedInTheGrid() {
        Path file = Practised.once(folder);
        ok(CommandRun.of(file, "focus", "6x7"));
        ok(CommandRun.of(file, "hold", "9x9"));
        String grid = ok(CommandRun.of(file, "grid"));
        assertTrue(grid.contains(" 42▄ *") && grid.contains(" 81· -"), grid);
    }

    @Test
    void aFamilyTellsRightOfAskedAndTheDay() {
        List<String> family = ok(CommandRun.of(Practised.once(folder), "family", "6x7"))
                .lines()
                .toList();
        assertEquals("Mina: 6, 7 and 42, ▄ acquiring", family.get(0));
        assertEquals(
                "question           level      right        thinking   last asked due        now/week/month",
                family.get(2));
        assertTrue(
                family.get(3)
                        .matches(
                                "▄  6 × 7, 7 × 6 +\\w+ +2 of 2 +\\d\\.\\d s +2026-03-01 +2026-03-\\d\\d +\\d+/\\d+/\\d+ %"),
                family.get(3));
        assertTrue(
                family.get(4)
                        .matches("▄  42 ÷ 6 +\\w+ +1 of 1 +\\d\\.\\d s +2026-03-01 +2026-03-\\d\\d +\\d+/\\d+/\\d+ %"),
                family.get(4));
        assertTrue(
                family.get(5).matches("▄  42 ÷ 7 +\\w+ +0 of 2 +- +2026-03-01 +2026-03-\\d\\d +\\d+/\\d+/\\d+ %"),
                family.get(5));
    }

    /** Read back by Gson, which had no part in the writing. */
    @Test
    void theGridAsJsonHasEveryFamilyOnce() {
        Path file = Practised.once(folder);
        ok(CommandRun.of(file, "hold", "9x9"));
        JsonObject grid = JsonParser.parseString(ok(CommandRun.of(file, "grid", "--json")))
                .getAsJsonObject();
        assertEquals("Mina", grid.get("child").getAsString());
        List<JsonObject> families = grid.getAsJsonArray("families").asList().stream()
                .map(JsonElement::getAsJsonObject)
                .toList();
        assertEquals(
                55,
                families.stream()
                        .map(f -> f.get("family").getAsString())
                        .distinct()
                        .count());
        JsonObject sixes = families.stream()
                .filter(f -> f.get("family").getAsString().equals("6x7"))
                .findFirst()
                .orElseThrow();
        assertEquals(42, sixes.get("product").getAsInt());
        assertEquals("acquiring", sixes.get("level").getAsString());
        assertEquals(5, sixes.get("asked").getAsInt());
        assertEquals(3, sixes.get("right").getAsInt());
        assertEquals(
                List.of("9x9"),
                families.stream()
                        .filter(f -> f.get("hold").getAsBoolean())
                        .map(f -> f.get("family").getAsString())
                        .toList());
    }

    @Test
    void aFamilyAsJsonHasItsTracesAndNamesOfAnyScriptSurvive() {
        Path file = Practised.children(folder, "Zoë \"李\"");
        String text = ok(CommandRun.of(file, "family", "6x7", "--json"));
        assertTrue(StandardCharsets.US_ASCII.newEncoder().canEncode(text), text);
        JsonObject family = JsonParser.parseString(text).getAsJsonObject();
        assertEquals("Zoë \"李\"", family.get("child").getAsString());
        assertEquals("new", family.get("level").getAsString());
        assertEquals(
                List.of("[\"6x7\",\"7x6\"]", "[\"42/6\"]", "[\"42/7\"]"),
                family.getAsJsonArray("traces").asList().stream()
                        .map(t -> t.getAsJsonObject().get("questions").toString())
                        .toList());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "focus 7x6|focus 6x7|The family 6x7: practised more, until fluent.",
                "focus 6x7 --end|release 6x7|The family 6x7: no longer in focus.",
                "hold 6X7|hold 6x7|The family 6x7: left out for now.",
                "hold --end 6x7|release 6x7|The family 6x7: practised again.",
                "reset 6x7|reset 6x7|The family 6x7: begun again. No answer was deleted."
            })
    void aActionForAFamilyIsKept(String command, String kept, String told) {
        Path file = Practised.once(folder);
        assertEquals(told + System.lineSeparator(), ok(CommandRun.of(file, command.split(" "))));
        assertEquals(List.of(kept), actions(file));
        assertEquals(15, Rows.of(file, "SELECT * FROM answer").size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "focus 7|focus|The table of 7: practised more, until fluent.",
                "focus 7 --end|release|The table of 7: no longer in focus.",
                "hold 7|hold|The table of 7: left out for now.",
                "hold 7 --end|release|The table of 7: practised again.",
                "reset 7|reset|The table of 7: begun again. No answer was deleted."
            })
    void aActionForATableIsKeptForEachOfItsTenFamilies(String command, String kind, String told) {
        Path file = Practised.once(folder);
        assertEquals(told + System.lineSeparator(), ok(CommandRun.of(file, command.split(" "))));
        assertEquals(
                Stream.of("1x7", "2x7", "3x7", "4x7", "5x7", "6x7", "7x7", "7x8", "7x9", "7x10")
                        .map(family -> kind + " " + family)
                        .toList(),
                actions(file));
        assertEquals(1, Rows.of(file, "SELECT DISTINCT made_at FROM act").size());
    }

    @Test
    void aTableIsSteeredWholeOrNotAtAll() {
        Path file = Practised.once(folder);
        Instant now = Instant.parse("2026-03-02T16:00:00Z");
        try (Store store = Store.open(file)) {
            Home home = Home.on(store, new SessionClock(now, ZoneOffset.UTC, () -> 0L), () -> 1L);
            Rows.change(
                    file,
                    "CREATE TRIGGER full BEFORE INSERT ON act WHEN NEW.detail = '5x7'"
                            + " BEGIN SELECT RAISE(FAIL, 'no room'); END");
            List<ParentAction> table = IntStream.rangeClosed(1, 10)
                    .<ParentAction>mapToObj(n -> new ParentAction.Hold(Family.of(n, 7)))
                    .toList();
            String told = InEnglish.failure(
                    () -> home.steering().keep(home.children().list().get(0), table, now));
            assertTrue(told.startsWith("could not keep the change in " + file), told);
        }
        assertEquals(List.of(), actions(file));
    }

    @Test
    void aResetBeginsTheFamilyAgainAndLeavesTheLogAlone() {
        Path file = Practised.once(folder);
        ok(CommandRun.of(file, "reset", "6x7"));
        assertTrue(ok(CommandRun.of(file, "family", "6x7")).startsWith("Mina: 6, 7 and 42, ▄ new"), "stones stay");
        String grid = ok(CommandRun.of(file, "grid"));
        assertTrue(grid.contains(" 42▄ <") && grid.contains("< was firmer"), grid);
        assertEquals(15, Rows.of(file, "SELECT * FROM answer").size());
    }

    @Test
    void theDemoShowsAnInventedFamilyAndForgetsWhatIsDoneToIt() throws IOException {
        Path file = Practised.once(folder);
        byte[] own = Files.readAllBytes(file);
        List<String> names =
                ok(CommandRun.of(file, "--demo", "children")).lines().toList();
        assertTrue(names.size() >= 2 && !names.contains("Mina"), names.toString());
        String grid = ok(CommandRun.of(file, "grid", "--demo", "--child", names.get(0)));
        assertFalse(grid.contains(": 0 of 55"), grid);
        ok(CommandRun.of(file, "reset", "2", "--demo", "--child", names.get(0)));
        assertEquals(grid, ok(CommandRun.of(file, "grid", "--demo", "--child", names.get(0))));
        assertArrayEquals(own, Files.readAllBytes(file));
    }
}
