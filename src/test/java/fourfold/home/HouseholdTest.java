// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Practised;
import fourfold.commands.Rows;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.progress.Setting;
import fourfold.records.AnswersCsv;
import fourfold.store.DrillLock;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.RowCounts;
import fourfold.upkeep.Verification;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against settings that do not hold, actions that are not told, and a child who is lost or comes back unasked. */
class HouseholdTest {
    private static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");

    @TempDir
    private Path folder;

    @Test
    void everySettingHasItsLineItsHelpAndItsLimits() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, NOW.minusSeconds(3600), 80, 24, true)) {
            journey.keys("3 s");
            for (Setting setting : Setting.values()) {
                String picture = journey.picture();
                assertTrue(picture.contains("Usual:"), picture);
                for (int i = 0; i < setting.offered().size() + 1; i++) {
                    journey.keys("Right");
                }
                List<String> offered = setting.offered();
                assertEquals(
                        offered.get(offered.size() - 1),
                        journey.home()
                                .records()
                                .progress(journey.home().children().list().get(0))
                                .steering()
                                .settings()
                                .value(setting));
                journey.keys("Down");
            }
            journey.keys("Enter 2 Enter");
            assertTrue(journey.picture().contains("2 1 5 10 3 4 6 7 8 9"), journey.picture());
            journey.keys("Enter Down Left Enter");
            assertTrue(journey.picture().contains("1 2 5 10 3 4 6 7 8 9"), journey.picture());
            journey.keys("Esc m 7");
            assertTrue(journey.picture().contains("order of tables 1 2 5 10"), journey.picture());
        }
        CommandRun listed = CommandRun.of(file, "settings");
        assertTrue(listed.out().contains("minutes    10"), listed.out());
        assertTrue(listed.out().contains("order      1 2 5 10 3 4 6 7 8 9"), listed.out());
        assertTrue(CommandRun.of(file, "settings", "minutes", "6").out().contains("minutes    6"));
        assertEquals(2, CommandRun.of(file, "settings", "minutes", "99").code());
        assertEquals(2, CommandRun.of(file, "settings", "colour", "red").code());
        assertTrue(CommandRun.of(file, "history").out().lines().count() > 10);
    }

    @Test
    void anAnswerHasTheZoneThatWasInForceWhenItWasAsked() throws IOException {
        // Summer time began in Berlin on 29 March 2026 at 01:00 UTC (IANA time zone database).
        Instant before = Instant.parse("2026-03-29T00:58:00Z");
        try (Store store = Store.open(Practised.children(folder, "Mina"))) {
            Home home = Home.on(store, new SessionClock(before, ZoneId.of("Europe/Berlin"), () -> 0L), () -> 1L);
            Child mina = home.children().list().get(0);
            DrillSession session = home.practice().newSession(mina, 8, before).orElseThrow();
            home.practice().begin(session);
            Answer first = AnswersCsv.read(
                            new StringReader(CommandRun.of(
                                            Practised.once(Files.createDirectories(folder.resolve("other"))),
                                            "export",
                                            "answers")
                                    .out()),
                            n -> mina.id())
                    .get(0);
            for (int position = 1; position <= 2; position++) {
                home.practice()
                        .keep(new Answer(
                                Answer.Place.in(session, position),
                                new Moment(before.plusSeconds(90L * position), session.zoneOffsetMinutes()),
                                first.purpose(),
                                first.prompt(),
                                first.typing(),
                                first.surface()));
            }
            assertEquals(
                    List.of(60, 120),
                    store.answers(mina.id()).stream()
                            .map(Answer::zoneOffsetMinutes)
                            .toList());
        }
    }

    @Test
    void whatWasTakenBackSaysSoInTheHistory() {
        Path file = Practised.once(folder);
        assertEquals(0, CommandRun.of(file, "focus", "6x7").code());
        try (Journey journey = new Journey(file, NOW.plusSeconds(60), 80, 24, true)) {
            journey.keys("3 u m 7");
            assertTrue(journey.picture().contains("focus on 6 × 7  (taken back)"), journey.picture());
        }
    }

    @Test
    void whatWasDoneToAWholeTableIsOneThingInTheHistory() {
        Path file = Practised.once(folder);
        assertEquals(0, CommandRun.of(file, "hold", "7").code());
        assertEquals(0, CommandRun.of(file, "settings", "divisions", "later").code());
        List<String> lines = CommandRun.of(file, "history")
                .out()
                .lines()
                .map(l -> l.substring(18))
                .toList();
        // The clock of a test stands still, so the two were done in the same moment, and either may come first.
        assertEquals(
                List.of("Divisions set to four weeks later", "hold of the table of 7"),
                lines.stream().sorted().toList());
    }

    @Test
    void allFamiliesAreSteeredOnlyWhenThatIsMeant() {
        Path file = Practised.once(folder);
        for (String command : List.of("focus", "hold", "reset")) {
            CommandRun unsure = CommandRun.of(file, command, "all");
            assertEquals(2, unsure.code());
            assertTrue(unsure.err().contains("Add --yes"), unsure.err());
            assertEquals(List.of(), Rows.column(file, "SELECT id FROM act WHERE kind = '" + command + "'"));
            assertEquals(0, CommandRun.of(file, command, "all", "--yes").code());
            assertEquals(
                    "55",
                    Rows.column(file, "SELECT COUNT(DISTINCT detail) FROM act WHERE kind = '" + command + "'")
                            .get(0));
        }
        assertEquals(15, Rows.of(file, "SELECT * FROM answer").size());
        assertTrue(CommandRun.of(file, "history").out().contains("reset of all families"));
    }

    @Test
    void undoLeavesWhoTheChildIs() {
        Path file = Practised.once(folder);
        assertEquals(0, CommandRun.of(file, "children", "--rename", "Mia").code());
        try (Journey journey = new Journey(file, NOW.plusSeconds(60), 80, 24, true)) {
            journey.keys("3 u");
            assertTrue(journey.picture().contains("There is nothing to undo."), journey.picture());
            assertEquals("Mia", journey.home().children().list().get(0).name());
        }
        assertTrue(CommandRun.of(file, "history").out().contains("new name Mia"));
    }

    @Test
    void aChildIsRenamedPutAwayAndBroughtBack() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("3 m 9 n M i a Enter");
            assertTrue(journey.picture().contains("Mia"), journey.picture());
            journey.keys("p");
            assertTrue(journey.home().children().list().isEmpty());
            assertTrue(journey.picture().contains("put away"), journey.picture());
            assertEquals(
                    "Mia  (put away)", CommandRun.of(file, "children").out().strip());
            journey.keys("p");
            assertEquals("Mia", journey.home().children().list().get(0).name());
            journey.keys("n Enter");
            assertEquals("Mia", journey.home().children().list().get(0).name(), "an empty name is refused");
        }
    }

    @Test
    void theOnlyChildWhoWasPutAwayIsBroughtBackOnTheScreen() {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("3 m 9 p Esc");
            assertTrue(journey.picture().contains("Add a child"), journey.picture());
            assertFalse(journey.picture().contains("Mina"), journey.picture());
            journey.keys("2");
            assertTrue(journey.picture().contains("Mina   put away"), journey.picture());
            journey.keys("p Esc");
            assertTrue(journey.picture().contains("Mina"), journey.picture());
            journey.keys("3");
            assertTrue(journey.picture().contains("of 55 families fluent"), journey.picture());
        }
    }

    @Test
    void noPageOfARemovedOrRenamedChildIsLeftOpen() {
        Path file = Practised.children(folder, "Mina", "Noa");
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("4 1 m 9 n Backspace M i a Enter Esc");
            assertTrue(journey.picture().contains("Mia"), journey.picture());
            journey.keys("4 1 m 9 x M i a Enter");
            assertTrue(journey.picture().contains("Mia was removed."), journey.picture());
            journey.keys("Esc");
            assertTrue(journey.picture().contains("Who wants to practise?"), journey.picture());
            assertFalse(journey.picture().contains("Mia"), journey.picture());
        }
    }

    @Test
    void aChildWhoPractisesInAnotherWindowIsNotRemoved() {
        Path file = Practised.once(folder);
        UUID mina;
        try (Store store = Store.open(file)) {
            mina = store.children().get(0).id();
        }
        DrillLock elsewhere = DrillLock.take(file, mina).orElseThrow();
        CommandRun run = CommandRun.of(file, "children", "--remove", "Mina", "--yes");
        elsewhere.close();
        assertEquals(1, run.code());
        assertTrue(run.err().contains("practising in another window"), run.err());
        assertEquals(List.of(), Backups.of(file).all());
        assertEquals(
                0, CommandRun.of(file, "children", "--remove", "Mina", "--yes").code());
    }

    @Test
    void nothingThatIsRememberedOfARemovedChildStays() {
        Path file = Practised.children(folder, "Mina", "Noa");
        try (Store store = Store.open(file)) {
            store.children()
                    .forEach(c ->
                            store.keepHomeSetting("paper" + c.id().toString().replace("-", ""), "1 2"));
            store.keepHomeSetting("window", "80x24");
        }
        assertEquals(
                0, CommandRun.of(file, "children", "--remove", "Mina", "--yes").code());
        try (Store store = Store.open(file)) {
            String noa = store.children().get(0).id().toString().replace("-", "");
            assertEquals(
                    List.of("paper" + noa, "window"), Rows.column(file, "SELECT name FROM home_setting ORDER BY name"));
        }
    }

    @Test
    void aChildIsRemovedOnlyWithTheNameTypedAfterABackupAndStaysAway() throws IOException {
        Path file = Practised.once(folder);
        Path other = Files.copy(file, folder.resolve("other.db"));
        CommandRun unsure = CommandRun.of(file, "children", "--remove", "Mina");
        assertEquals(2, unsure.code(), unsure.out());
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("3 m 9 x M i n Enter");
            assertTrue(journey.picture().contains("was not removed"), journey.picture());
            assertEquals(1, journey.home().children().list().size());
        }
        CommandRun run = CommandRun.of(file, "children", "--remove", "Mina", "--yes");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Verification.of(file));
        assertEquals("0", Rows.column(file, "SELECT COUNT(*) FROM answer").get(0));
        assertFalse(
                new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains("Mina"),
                "what was deleted is overwritten");
        Path backup = Backups.of(file).all().get(0).file();
        try (Store store = Store.open(backup)) {
            assertEquals(1, store.children().size());
        }
        try (Store store = Store.open(file)) {
            Merge merge = Merge.of(store, other, new Merge.Said(Set.of(), Map.of(), NOW, 0));
            assertEquals(List.of("Mina"), merge.leftOut());
            assertEquals(RowCounts.NONE, merge.came());
        }
    }
}
