// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against a counted answer that is lost when the power goes. What was forced to the disk before an answer counted is
 * there afterwards; of what was written since then any sector may be there, or be torn, or hold what it held before, in any
 * order. Each such state is made from the bytes of a drill as it goes on, opened by the program, and must hold every
 * answer that was counted, exactly once. More of them by lot with {@code -Dfourfold.faults=100}.
 */
class FaultLaboratoryTest {
    private static final int SECTOR = 512;
    private static final int BY_LOT = Integer.getInteger("fourfold.faults", 1);
    private static final Child ANA = Invented.child(1, "Ana");
    private static final DrillSession DRILL = Invented.session(ANA, 1);

    @TempDir
    private Path folder;

    private Path file = Path.of("");
    private final SplittableRandom random = new SplittableRandom(19);
    private final byte[] garbage = new byte[SECTOR];
    private int states;

    /** What lies on the disk after a forced write, and how many answers counted by then. */
    private static final class Durable {
        private final byte[] database;
        private final byte[] log;
        private final int counted;

        Durable(byte[] database, byte[] log, int counted) {
            this.database = database;
            this.log = log;
            this.counted = counted;
        }

        byte[] database() {
            return database;
        }

        byte[] log() {
            return log;
        }

        int counted() {
            return counted;
        }
    }

    @BeforeEach
    void nameFile() {
        file = folder.resolve("family.db");
    }

    /** A drill of so many answers; a checkpoint comes after those in the list. */
    private List<Durable> drill(int answers, List<Integer> checkpoints) throws IOException {
        List<Durable> moments = new ArrayList<>();
        try (Store store = Store.open(file)) {
            store.add(ANA);
            store.begin(DRILL);
            for (int position = 1; position <= answers; position++) {
                store.keep(Invented.answer(DRILL, position));
                moments.add(now(position));
                if (checkpoints.contains(position)) {
                    store.checkpoint();
                    moments.add(now(position));
                }
            }
        }
        return moments;
    }

    private Durable now(int counted) throws IOException {
        return new Durable(Files.readAllBytes(file), Files.readAllBytes(Journal.log(file)), counted);
    }

    /** Opens a state as the next start would, and counts; also the state after that, when all is in one file. */
    private void assertKept(byte[] database, byte[] log, int counted, String how) throws IOException {
        Path tried = folder.resolve("state").resolve("family.db");
        Files.createDirectories(tried.getParent());
        for (Path left : List.of(Journal.log(tried), Journal.beside(tried, "-shm"), Journal.rollback(tried))) {
            Files.deleteIfExists(left);
        }
        Files.write(tried, database);
        Files.write(Journal.log(tried), log);
        states++;
        for (int start = 1; start <= 2; start++) {
            try (Store store = Store.open(tried)) {
                List<Integer> there =
                        store.answers(ANA.id()).stream().map(Answer::position).toList();
                assertTrue(there.size() >= counted, how + ": only " + there + " of " + counted + " at start " + start);
                assertEquals(IntStream.rangeClosed(1, there.size()).boxed().toList(), there, how);
            }
        }
    }

    /** What was forced stays; of the sectors that differ from it since, those are there that the set names. */
    private static byte[] mixed(byte[] forced, byte[] written, java.util.function.IntPredicate there) {
        byte[] mixed = Arrays.copyOf(forced, Math.max(forced.length, written.length));
        for (int at = 0; at < written.length; at += SECTOR) {
            if (there.test(at / SECTOR)) {
                System.arraycopy(written, at, mixed, at, Math.min(SECTOR, written.length - at));
            }
        }
        return mixed;
    }

    @Test
    void aLogWhoseNewEndIsCutTornStaleOrOutOfOrderCostsNoCountedAnswer() throws IOException {
        List<Durable> moments = drill(7, List.of(3));
        for (int i = 1; i < moments.size(); i++) {
            Durable before = moments.get(i - 1);
            Durable after = moments.get(i);
            if (after.counted() == before.counted()) {
                continue;
            }
            int first = firstDifference(before.log(), after.log()) / SECTOR;
            int last = (after.log().length - 1) / SECTOR;
            for (int cut = first; cut <= last; cut += i == 2 ? 1 : 8) {
                int end = cut;
                String how = "answer " + after.counted() + ", sector " + cut;
                byte[] upTo = mixed(before.log(), after.log(), sector -> sector < end);
                assertKept(before.database(), upTo, before.counted(), how + " and all after it as before");
                if (before.log().length <= end * SECTOR) {
                    byte[] ended = Arrays.copyOf(after.log(), end * SECTOR);
                    assertKept(before.database(), ended, before.counted(), how + " cut off");
                }
                byte[] lost = mixed(before.log(), after.log(), sector -> sector != end);
                assertKept(before.database(), lost, before.counted(), how + " lost alone");
                byte[] torn = after.log().clone();
                random.nextBytes(garbage);
                // What a sector held before that was not written again stays (SQLite: "powersafe overwrite").
                int from = Math.max(end * SECTOR, firstDifference(before.log(), after.log()));
                System.arraycopy(garbage, 0, torn, from, Math.min(torn.length, (end + 1) * SECTOR) - from);
                byte[] tornAlone = mixed(before.log(), torn, sector -> sector >= first);
                assertKept(before.database(), tornAlone, before.counted(), how + " torn");
            }
            for (int lot = 0; lot < 4 * BY_LOT; lot++) {
                long seed = random.nextLong();
                byte[] any = mixed(before.log(), after.log(), sector -> (seed >>> (sector % 61) & 1) == 1);
                assertKept(before.database(), any, before.counted(), "sectors by lot " + seed);
            }
        }
        assertTrue(states > 100, states + " states");
    }

    private static int firstDifference(byte[] one, byte[] other) {
        int same = Arrays.mismatch(one, other);
        return same < 0 ? one.length : same;
    }

    @Test
    void aCheckpointStoppedAfterAnySectorCostsNothing() throws IOException {
        List<Durable> moments = drill(6, List.of(5));
        Durable before = moments.get(4);
        Durable after = moments.get(5);
        int sectors = after.database().length / SECTOR;
        for (int stopped = 0; stopped <= sectors; stopped += 3) {
            int end = stopped;
            assertKept(
                    mixed(before.database(), after.database(), sector -> sector < end),
                    before.log(),
                    before.counted(),
                    "checkpoint stopped after sector " + stopped);
        }
        for (int lot = 0; lot < 10 * BY_LOT; lot++) {
            SplittableRandom sectorsByLot = random.split();
            assertKept(
                    mixed(before.database(), after.database(), sector -> sectorsByLot.nextBoolean()),
                    before.log(),
                    before.counted(),
                    "checkpoint with sectors by lot");
        }
    }

    @Test
    void aFullDiskRefusesAnAnswerAndKeepsThoseBeforeIt() {
        int counted = 0;
        Reason why = Reason.OTHER;
        try (Store store = Store.open(file)) {
            store.add(ANA);
            store.begin(DRILL);
            store.database().read(Task.KEEP_ANSWER, c -> {
                long pages = Database.query(c, "PRAGMA page_count", none -> {}, row -> row.getLong(1))
                        .get(0);
                return Database.query(c, "PRAGMA max_page_count = " + (pages + 2), none -> {}, row -> 1);
            });
            try {
                for (int position = 1; position < 1_000; position++) {
                    store.keep(Invented.answer(DRILL, position));
                    counted++;
                }
            } catch (RecordsFailure e) {
                why = e.problem().reason();
            }
        }
        assertEquals(Reason.DISK_FULL, why);
        try (Store store = Store.open(file)) {
            assertTrue(counted > 10, counted + " answers");
            assertEquals(
                    IntStream.rangeClosed(1, counted).boxed().toList(),
                    store.answers(ANA.id()).stream().map(Answer::position).toList());
        }
    }
}
