// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure.Task;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.Verification;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against a file that is half of something when a merge, an import, a removal or a migration is killed. The log is
 * only ever added to, so all states that a kill can leave are its beginnings: it is cut after each page that the work
 * wrote, and in the middle of each. The next start must find all of the work or nothing of it. What a failing disk makes of
 * the same work is tried by {@link FaultLaboratory}.
 */
class UpkeepStoppedTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final int LOG_HEAD = 32;
    private static final int FRAME = 24 + 4096;

    @TempDir
    private Path folder;

    private static void filled(Path file, int from, int to) {
        try (Store store = Store.open(file)) {
            store.add(ANA);
            keep(store, from, to);
        }
    }

    private static void keep(Store store, int from, int to) {
        List<DrillSession> sessions = IntStream.range(from, to)
                .mapToObj(n -> Invented.session(ANA, n))
                .toList();
        List<Answer> answers = sessions.stream()
                .flatMap(s -> IntStream.rangeClosed(1, 12).mapToObj(p -> Invented.answer(s, p)))
                .toList();
        store.keepAll(sessions, answers);
    }

    private Path prepared(String work) throws IOException, SQLException {
        Path file = folder.resolve("family.db");
        if (work.equals("migration")) {
            try (InputStream kept = Objects.requireNonNull(
                    UpkeepStoppedTest.class.getResourceAsStream("/fourfold/store/earlier/version-1.db"))) {
                Files.copy(kept, file);
            }
        } else {
            filled(file, 0, 6);
        }
        filled(folder.resolve("other.db"), 4, 10);
        try (Connection connection = Connections.plain(file)) {
            Connections.run(connection, "PRAGMA journal_mode = WAL");
        }
        return file;
    }

    private void does(String work, Path file) {
        try (Store store = Store.open(file, Duration.ofMillis(20))) {
            switch (work) {
                case "merge" ->
                    Merge.of(store, folder.resolve("other.db"), new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
                case "import" -> keep(store, 6, 10);
                case "removal" -> store.remove(ANA.id(), Instant.EPOCH);
                case "migration" -> assertEquals(2, store.children().size());
                default -> throw new IllegalArgumentException(work);
            }
        }
    }

    private static String counts(Path file) {
        String all = "SELECT (SELECT COUNT(*) FROM child) || ' ' || (SELECT COUNT(*) FROM drill) || ' '"
                + " || (SELECT COUNT(*) FROM answer) || ' ' || (SELECT COUNT(*) FROM removed_record)";
        try (Store store = Store.open(file)) {
            return store.database()
                    .read(
                            Task.READ_ANSWERS,
                            c -> Database.query(c, all, none -> {}, row -> row.getString(1))
                                    .get(0));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"merge", "import", "removal", "migration"})
    void workStoppedAtAnyPageIsDoneOrWasNeverBegun(String work) throws IOException, SQLException {
        Path file = prepared(work);
        byte[] log;
        byte[] before;
        // Whoever reads an earlier state keeps the log from coming into the file.
        try (Connection reader = Connections.reading(file)) {
            Connections.run(reader, "BEGIN");
            Database.query(reader, "SELECT COUNT(*) FROM child", none -> {}, row -> row.getInt(1));
            before = Files.readAllBytes(file);
            does(work, file);
            log = Files.readAllBytes(Journal.log(file));
            assertTrue(Arrays.equals(before, Files.readAllBytes(file)), "the log came into the file");
        }
        Path state = Files.createDirectory(folder.resolve("state")).resolve("family.db");
        Set<String> seen = new TreeSet<>();
        int step = work.equals("migration") ? FRAME : FRAME / 2;
        for (int end = LOG_HEAD; end <= log.length; end += step) {
            for (Path left : List.of(Journal.log(state), Journal.beside(state, "-shm"))) {
                Files.deleteIfExists(left);
            }
            Files.write(state, before);
            Files.write(Journal.log(state), Arrays.copyOf(log, end));
            seen.add(counts(state));
            assertEquals(List.of(), Verification.of(state), work + " stopped at byte " + end);
        }
        Set<String> expected = switch (work) {
            case "removal" -> Set.of("1 6 72 0", "0 0 0 7");
            case "migration" -> Set.of("2 6 72 0");
            default -> Set.of("1 6 72 0", "1 10 120 0");
        };
        assertEquals(new TreeSet<>(expected), seen);
    }

    @Test
    void aCopyForAMoveThatWasCutShortHasNoNameAndIsMadeAnew() throws IOException {
        Path file = folder.resolve("family.db");
        filled(file, 0, 6);
        Path stick = Files.createDirectory(folder.resolve("stick"));
        byte[] whole = Files.readAllBytes(
                Backups.of(file).to(stick.resolve("first.db")).file());
        for (int cut = 0; cut < whole.length; cut += 2_500) {
            Path copy = stick.resolve("copy" + cut + ".db");
            Files.write(stick.resolve("copy" + cut + ".unfinished"), Arrays.copyOf(whole, cut));
            assertTrue(!Files.exists(copy));
            assertEquals(List.of(), Verification.of(Backups.of(file).to(copy).file()));
            assertTrue(!Files.exists(stick.resolve("copy" + cut + ".unfinished")));
        }
    }
}
