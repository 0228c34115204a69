// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.commands.CommandRun;
import fourfold.commands.Journey;
import fourfold.commands.Practised;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.store.Invented;
import fourfold.store.Later;
import fourfold.store.Store;
import fourfold.store.StoreFile;
import fourfold.upkeep.Verification;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against answers of one computer that never reach the other, and against a folder that harms the family's file. */
class TwoComputersTest {
    private static final Instant NOW = Instant.parse("2026-03-02T16:00:00Z");
    private static final Child ANA = Invented.child(1, "Ana");

    @TempDir
    private Path folder;

    private Path stick = Path.of("");

    @BeforeEach
    void makeFolder() throws IOException {
        stick = Files.createDirectories(folder.resolve("stick"));
    }

    private Path computer(String name) throws IOException {
        return Files.createDirectories(folder.resolve(name)).resolve("fourfold.db");
    }

    private static void drill(Store store, int number) {
        DrillSession session = Invented.session(ANA, number);
        store.add(ANA);
        store.begin(session);
        store.keep(Invented.answer(session, 1));
    }

    private static TwoComputers on(Store store, Path file) {
        return new TwoComputers(store, Optional.of(file));
    }

    private List<Path> laid() throws IOException {
        try (Stream<Path> files = Files.list(stick)) {
            return files.sorted().toList();
        }
    }

    @Test
    void whatIsPractisedOnEitherIsSoonOnBoth() throws IOException {
        Path kitchen = computer("kitchen");
        Path study = computer("study");
        try (Store one = Store.open(kitchen);
                Store other = Store.open(study)) {
            drill(one, 1);
            drill(other, 2);
            assertEquals(List.of(), on(one, kitchen).setUp(stick, "kit/chen", NOW));
            List<TwoComputers.Report> first = on(other, study).setUp(stick, "study", NOW);
            assertEquals(1, first.get(0).taken().orElseThrow().came().of(fourfold.upkeep.RowCounts.Kind.ANSWER));
            assertEquals(2, other.answers(ANA.id()).size());
            assertEquals(1, on(one, kitchen).takeIn(NOW).size());
            assertEquals(List.of(), on(one, kitchen).takeIn(NOW), "what is known is not read again");
            assertEquals(other.answers(ANA.id()), one.answers(ANA.id()));
            drill(one, 3);
            on(one, kitchen).lay();
            on(other, study).takeIn(NOW);
            assertEquals(3, other.answers(ANA.id()).size());
            assertEquals(2, on(other, study).state().there().size());
            assertTrue(on(one, kitchen).state().own().matches("kitchen-[0-9a-f]{8}"));
            on(other, study).stop();
            assertEquals(1, laid().size(), "the own file goes, and only that");
            assertEquals(3, other.answers(ANA.id()).size());
        }
    }

    @Test
    void whatLiesThereIsWholeAndHoldsNeitherPinNorSettings() throws IOException {
        Path kitchen = computer("kitchen");
        try (Store store = Store.open(kitchen)) {
            drill(store, 1);
            new Gate(store, 1000).set("4711", NOW);
            on(store, kitchen).setUp(stick, "kitchen", NOW);
        }
        assertEquals(1, laid().size());
        assertEquals(List.of(), Verification.of(laid().get(0)));
        try (Store store = Store.open(laid().get(0))) {
            assertTrue(store.gate().isEmpty());
            assertEquals(Optional.empty(), store.homeSetting("together.folder"));
            assertEquals(1, store.answers(ANA.id()).size());
        }
    }

    @Test
    void aHalfCopiedOlderNewerOrForeignFileIsPassedOverWithOneLine() throws IOException {
        Path kitchen = computer("kitchen");
        Path study = computer("study");
        try (Store one = Store.open(kitchen);
                Store other = Store.open(study)) {
            drill(other, 2);
            on(other, study).setUp(stick, "study", NOW);
            drill(one, 1);
            on(one, kitchen).setUp(stick, "kitchen", NOW);
            byte[] whole = Files.readAllBytes(laid().stream()
                    .filter(f -> f.toString().contains("study"))
                    .findFirst()
                    .orElseThrow());
            Files.write(stick.resolve("fourfold-half-00000001.db"), Arrays.copyOf(whole, whole.length / 2));
            Files.writeString(stick.resolve("fourfold-letter-00000002.db"), "Dear Ana");
            try (InputStream older =
                    TwoComputersTest.class.getResourceAsStream("/fourfold/store/earlier/version-3.db")) {
                Files.copy(Objects.requireNonNull(older), stick.resolve("fourfold-attic-00000003.db"));
            }
            StoreFile.open(stick.resolve("fourfold-school-00000004.db"), StoreFile.PATIENCE, Later.schema())
                    .close();
            Files.writeString(stick.resolve("holiday.jpg"), "no file of ours");
            Files.writeString(stick.resolve("fourfold-study-00000009.unfinished"), "half");
            List<TwoComputers.Report> reports = on(one, kitchen).takeIn(NOW);
            assertEquals(4, reports.size());
            for (TwoComputers.Report report : reports) {
                String line = InEnglish.failure(() -> {
                    throw report.failure().orElseThrow();
                });
                assertEquals(1, line.lines().count(), line);
                assertTrue(line.contains(report.computer()), line);
                assertEquals(report.computer().startsWith("attic"), line.contains("an older Fourfold"), line);
                assertEquals(report.computer().startsWith("school"), line.contains("a newer Fourfold"), line);
            }
            assertEquals(2, one.answers(ANA.id()).size());
        }
        assertEquals(List.of(), Verification.of(kitchen));
    }

    @Test
    void aFamilysFileThatWasCopiedToAnotherComputerHasItsOwnNameThere() throws IOException {
        Path kitchen = computer("kitchen");
        Path copied = computer("copied");
        try (Store store = Store.open(kitchen)) {
            drill(store, 1);
            on(store, kitchen).setUp(stick, "kitchen", NOW);
        }
        Files.copy(kitchen, copied);
        try (Store one = Store.open(kitchen);
                Store other = Store.open(copied)) {
            drill(one, 2);
            on(one, kitchen).lay();
            drill(other, 3);
            on(other, copied).lay();
            assertEquals(2, laid().size(), "one of them overwrote the other's");
            on(one, kitchen).takeIn(NOW);
            on(other, copied).takeIn(NOW);
            assertEquals(3, one.answers(ANA.id()).size());
            assertEquals(one.answers(ANA.id()), other.answers(ANA.id()));
        }
    }

    @Test
    void theLivingFileIsNeverInTheFolder() throws IOException {
        Path kitchen = computer("kitchen");
        try (Store store = Store.open(kitchen)) {
            String told = InEnglish.failure(() -> on(store, kitchen).setUp(kitchen.resolveSibling(""), "kitchen", NOW));
            assertTrue(told.contains("the store itself is in this folder"), told);
            assertTrue(InEnglish.failure(() -> on(store, kitchen).setUp(folder.resolve("gone"), "k", NOW))
                    .contains("there is no folder"));
            on(store, kitchen).lay();
            assertEquals(List.of(), laid());
        }
    }

    @Test
    void thePageSetsItUpShowsWhoWasThereAndUndoesIt() throws IOException {
        Path file = Practised.once(folder);
        try (Journey journey = new Journey(file, NOW, 80, 24, true)) {
            journey.keys("3 m Up Up Up Enter");
            assertTrue(journey.picture().contains("This computer meets no other."), journey.picture());
            journey.keys("n").type(stick.toString()).keys("Enter");
            assertTrue(journey.picture().contains("this computer"), journey.picture());
            assertEquals(1, laid().size());
            journey.keys("x");
            assertTrue(journey.picture().contains("What was taken in stays"), journey.picture());
            assertEquals(0, laid().size());
        }
    }

    @Test
    void theCommandDoesTheSameAndADrillLaysItsRecordsThere() throws IOException {
        Path file = Practised.once(folder);
        CommandRun set = CommandRun.of(file, "together", stick.toString(), "--called", "kitchen");
        assertEquals(0, set.code(), set.err());
        assertTrue(set.out().contains("They meet in " + stick) && set.out().contains("this computer"), set.out());
        try (Store store = Store.open(file)) {
            String before = store.homeSetting("together.laid").orElseThrow();
            Home home = Home.on(
                    store, new fourfold.terminal.SessionClock(NOW, java.time.ZoneOffset.UTC, () -> 0L), () -> 1L);
            assertFalse(home.children().list().isEmpty());
            drill(store, 1);
            on(store, file).lay();
            assertFalse(before.equals(store.homeSetting("together.laid").orElseThrow()));
        }
        assertEquals(
                2, CommandRun.of(file, "together", stick.toString(), "--stop").code());
        CommandRun stopped = CommandRun.of(file, "together", "--stop");
        assertTrue(stopped.out().contains("meets no other"), stopped.out());
        assertEquals(List.of(), laid());
    }
}
