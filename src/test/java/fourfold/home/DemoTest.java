// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.records.AnswersCsv;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a demo that is old, that differs from build to build, or that shows other answers than are written down. */
class DemoTest {
    private static final Path ANSWERS = Path.of("demo-data/family.csv");

    @TempDir
    private Path folder;

    @Test
    void theFileThatTheBuildPutIntoTheProgramIsMadeAgainToTheByte() throws IOException {
        Path made = Files.createFile(folder.resolve("made.db"));
        DemoFile.make(ANSWERS, made);
        try (InputStream built = Demo.class.getResourceAsStream(DemoFile.RESOURCE)) {
            assertArrayEquals(Objects.requireNonNull(built).readAllBytes(), Files.readAllBytes(made));
        }
    }

    @Test
    void itShowsTheAnswersWrittenDownMovedByWholeDaysSoThatTheLastDrillWasYesterday() throws IOException {
        Instant now = Instant.parse("2031-10-05T15:00:00Z");
        Map<String, UUID> ids = new HashMap<>();
        Demo demo = Demo.make(new SessionClock(now, ZoneOffset.UTC, () -> 0));
        Store store = demo.store();
        Path file = store.file().orElseThrow();
        for (Child child : store.children()) {
            ids.put(child.name(), child.id());
        }
        List<Answer> written;
        try (Reader reader = Files.newBufferedReader(ANSWERS)) {
            written = AnswersCsv.read(reader, ids::get);
        }
        Instant last =
                written.stream().map(Answer::askedAt).max(Instant::compareTo).orElseThrow();
        Duration days = Duration.ofDays(Duration.between(
                        last.atOffset(ZoneOffset.UTC)
                                .toLocalDate()
                                .atStartOfDay()
                                .toInstant(ZoneOffset.UTC),
                        Instant.parse("2031-10-04T00:00:00Z"))
                .toDays());
        int shown = 0;
        for (UUID child : ids.values()) {
            List<Answer> moved = written.stream()
                    .filter(a -> a.child().equals(child))
                    .map(a -> a.askedAt(a.askedAt().plus(days)))
                    .toList();
            assertEquals(moved, store.answers(child));
            shown += moved.size();
        }
        assertEquals(written.size(), shown);
        assertTrue(ids.size() > 2);
        store.close();
        demo.close();
        assertFalse(Files.exists(file));
    }
}
