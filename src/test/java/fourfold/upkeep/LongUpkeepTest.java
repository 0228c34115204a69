// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.store.Impatient;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against upkeep of a large file that tells nobody how far it has come, or keeps a child from practising. */
class LongUpkeepTest {
    private static final Child ANA = Invented.child(1, "Ana");
    private static final Child BO = Invented.child(2, "Bo");
    private static final DrillSession TODAY = Invented.session(ANA, 5_000);

    /** A family's file and another's of 5,000 answers each. */
    private static final MadeOnce FAMILY = MadeOnce.by(file -> filled(file, ANA, 0));

    private static final MadeOnce OTHER = MadeOnce.by(file -> filled(file, BO, 1_000));

    @TempDir
    private Path folder;

    private Path family = Path.of("");
    private Path other = Path.of("");

    @BeforeEach
    void makeFiles() {
        family = FAMILY.at(folder.resolve("family.db"));
        other = OTHER.at(folder.resolve("other.db"));
    }

    private static void filled(Path file, Child child, int first) {
        try (Store store = Store.open(file)) {
            store.add(child);
            List<DrillSession> sessions = IntStream.range(first, first + 100)
                    .mapToObj(n -> Invented.session(child, n))
                    .toList();
            List<Answer> answers = sessions.stream()
                    .flatMap(s -> IntStream.rangeClosed(1, 50).mapToObj(p -> Invented.answer(s, p)))
                    .toList();
            store.keepAll(sessions, answers);
        }
    }

    private void work(String work, Advance advance) {
        switch (work) {
            case "verify" -> Verification.of(family, advance);
            case "backup" -> Backups.of(family).to(folder.resolve("copy.db"), advance);
            case "salvage" ->
                Salvage.of(family, List.of(), folder.resolve("saved.db"), number -> "N" + number, advance);
            case "preview of a restore" -> Difference.of(family, other, advance);
            case "preview of a merge" -> {
                try (Store store = Store.open(family)) {
                    Merge.preview(store, other, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0), advance);
                }
            }
            default -> throw new IllegalArgumentException(work);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"verify", "backup", "salvage", "preview of a restore", "preview of a merge"})
    void tellsHowFarItHasCome(String work) {
        List<Integer> told = new ArrayList<>();
        work(work, told::add);
        assertTrue(told.stream().allMatch(p -> p >= 0 && p <= 100), work + " told " + told);
        assertTrue(told.stream().distinct().count() >= 4, work + " told " + told);
        assertTrue(told.get(told.size() - 1) >= 80, work + " told " + told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"verify", "backup", "preview of a restore", "preview of a merge"})
    void holdsNoLockAndAnotherProgramGoesOnWriting(String work) throws Exception {
        AtomicBoolean over = new AtomicBoolean();
        List<Integer> kept = new ArrayList<>();
        try (Store child = Impatient.store(family, Duration.ofMillis(50))) {
            child.begin(TODAY);
            CompletableFuture<Void> practising = CompletableFuture.runAsync(() -> {
                for (int position = 1; !over.get(); position++) {
                    child.keep(Invented.answer(TODAY, position));
                    kept.add(position);
                }
            });
            work(work, percent -> {});
            over.set(true);
            practising.get();
            List<Answer> there = child.answers(ANA.id()).stream()
                    .filter(a -> a.drill().equals(TODAY.id()))
                    .toList();
            assertEquals(kept.size(), there.size());
            assertTrue(!kept.isEmpty(), "nothing was kept meanwhile");
        }
    }

    @Test
    void whatIsWrittenDuringAPreviewIsThereAfterIt() {
        try (Store child = Impatient.store(family, Duration.ofMillis(50));
                Store store = Store.open(family)) {
            child.begin(TODAY);
            List<Integer> kept = new ArrayList<>();
            Advance keeping = percent -> {
                if (kept.isEmpty() || kept.get(kept.size() - 1) < percent) {
                    kept.add(percent);
                    child.keep(Invented.answer(TODAY, kept.size()));
                }
            };
            Merge.preview(store, other, new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0), keeping);
            Difference.of(family, other, keeping);
            assertTrue(kept.size() >= 4, kept.toString());
            assertEquals(5_000 + kept.size(), store.answers(ANA.id()).size());
        }
    }
}
