// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.store.Answers;
import fourfold.store.Database;
import fourfold.store.DatabaseCopy;
import fourfold.store.DrillSessions;
import fourfold.store.Invented;
import fourfold.store.Later;
import fourfold.store.Schema;
import fourfold.store.Store;
import fourfold.store.StoreFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against a file that is half of something after the program was killed in the middle of a backup, a restore, a
 * merge, a migration or a removal. More kills with {@code -Dfourfold.kills=500}.
 */
@DisabledOnOs(OS.WINDOWS)
@Timeout(3600)
class KilledAtWorkTest {
    private static final int KILLS = Math.max(2, Integer.getInteger("fourfold.kills", 20) / 10);
    private static final Child ANA = Invented.child(1, "Ana");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"backup", "restore", "merge", "migrate"})
    void theFileIsWholeAfterAKill(String work) throws Exception {
        Path file = filled("family.db", 0, 30);
        Path other = filled("other.db", 20, 50);
        SplittableRandom random = new SplittableRandom(work.hashCode());
        for (int kill = 0; kill < KILLS; kill++) {
            killed(work, file, other, random.nextLong(600_000_000L));
            Files.deleteIfExists(file.resolveSibling("again.tmp"));
            // The next program opens the file as if nothing had been; a migration that was cut short is done now.
            try (Database database = StoreFile.open(file, StoreFile.PATIENCE, schema(work))) {
                int drills = database.read(
                        RecordsFailure.Task.READ_ANSWERS,
                        c -> DrillSessions.of(c, ANA.id()).size());
                assertTrue(drills == 30 || drills == 50, work + " left " + drills + " drills");
                int answers = database.read(RecordsFailure.Task.READ_ANSWERS, c -> {
                    List<Answer> all = new ArrayList<>();
                    Answers.read(c, ANA.id(), all::add);
                    return all.size();
                });
                assertEquals(drills * 20, answers);
            }
            DatabaseCopy.check(file);
            for (Backup backup : Backups.of(file).all()) {
                assertTrue(Verification.of(backup.file()).isEmpty() || work.equals("migrate"), backup.name());
            }
        }
    }

    @Test
    void aRemovalIsWholeOrNotAtAllAfterAKill() throws Exception {
        Path file = filled("family.db", 0, 30);
        Path before = Files.copy(file, folder.resolve("before.db"));
        SplittableRandom random = new SplittableRandom(5);
        for (int kill = 0; kill < KILLS; kill++) {
            killed("remove", file, before, random.nextLong(600_000_000L));
            Files.deleteIfExists(file.resolveSibling("again.tmp"));
            try (Database database = StoreFile.open(file, StoreFile.PATIENCE, Schema.TODAY)) {
                String all = "SELECT (SELECT COUNT(*) FROM child) || ' ' || (SELECT COUNT(*) FROM drill) || ' '"
                        + " || (SELECT COUNT(*) FROM answer) || ' ' || (SELECT COUNT(*) FROM removed_record)";
                String left = database.read(
                        RecordsFailure.Task.READ_ANSWERS,
                        c -> Database.query(c, all, none -> {}, row -> row.getString(1))
                                .get(0));
                assertTrue(left.equals("1 30 600 0") || left.equals("0 0 0 31"), left);
            }
            DatabaseCopy.check(file);
            for (Backup backup : Backups.of(file).all()) {
                assertEquals(List.of(), Verification.of(backup.file()), backup.name());
            }
        }
    }

    private static Schema schema(String work) {
        return work.equals("migrate") ? Later.schema() : Schema.TODAY;
    }

    private Path filled(String name, int from, int to) {
        Path file = folder.resolve(name);
        try (Store store = Store.open(file)) {
            store.add(ANA);
            List<DrillSession> sessions = IntStream.range(from, to)
                    .mapToObj(n -> Invented.session(ANA, n))
                    .toList();
            List<Answer> answers = new ArrayList<>();
            sessions.forEach(s -> IntStream.rangeClosed(1, 20).forEach(p -> answers.add(Invented.answer(s, p))));
            store.keepAll(sessions, answers);
        }
        return file;
    }

    private static void killed(String work, Path file, Path other, long nanos)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Worker.class.getName(),
                        work,
                        file.toString(),
                        other.toString()))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader said = process.inputReader(StandardCharsets.US_ASCII)) {
            assertEquals("works", said.readLine());
            // The moment of the kill is what is drawn by lot; nothing is waited for.
            LockSupport.parkNanos(nanos);
            process.toHandle().destroyForcibly();
            assertTrue(process.waitFor(10, TimeUnit.SECONDS));
        }
        assertEquals(137, process.exitValue(), "it ended by itself");
    }
}
