package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Child;
import fourfold.screens.PtyProgram;
import fourfold.store.Store;
import fourfold.store.Verification;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against an answer that was shown as counted and is gone after the program was killed: the packaged jar in a
 * pseudo-terminal, killed with SIGKILL at a moment drawn by lot, often in the middle of keeping an answer.
 *
 * <p>Twenty kills; more with {@code mvn verify -Dit.test=KilledDrillEndToEnd -Dfourfold.kills=500}.
 */
@Execution(ExecutionMode.CONCURRENT)
class KilledDrillEndToEnd {
    private static final int KILLS = Integer.getInteger("fourfold.kills", 20);
    private static final int HANDS = 2;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    @Execution(ExecutionMode.CONCURRENT)
    void everyAnswerShownAsCountedIsInTheFile(int hand) {
        Path file = folder.resolve("family-" + hand + ".db");
        try (Store store = Store.open(file)) {
            store.add(new Child(new UUID(7, hand), "Mina", Practised.BEGAN));
        }
        SplittableRandom dice = new SplittableRandom(hand);
        int inFlight = 0;
        for (int kill = 0; kill < KILLS / HANDS; kill++) {
            inFlight += killed(file, 1 + dice.nextInt(2), dice.nextLong(2_500_000_000L));
            assertEquals(List.of(), Verification.of(tidied(file)), "after kill " + kill);
        }
        System.out.println("killed " + KILLS / HANDS + " times; " + inFlight + " answers on their way were kept too");
    }

    /** Kills the program while a child types; gives how many of the answers on their way were kept. */
    private static int killed(Path file, int answers, long nanos) {
        List<String> command = PackagedProgramEndToEnd.fourfold("drill", "--minutes", "5");
        try (PtyProgram program = PtyProgram.start(Map.of("FOURFOLD_STORE", file.toString()), 80, 24, command)) {
            PtyChild child = new PtyChild(program);
            child.answer(answers);
            Thread playing = new Thread(child::playOn);
            playing.start();
            LockSupport.parkNanos(nanos);
            ProcessHandle.of(program.pid()).orElseThrow().destroyForcibly();
            int counted = child.counted();
            program.exitCode();
            child.stop();
            join(playing);
            List<List<String>> typed = child.replies().stream()
                    .map(r -> List.of(r.asked(), r.typed()))
                    .toList();
            List<List<String>> kept = Rows.of(
                    tidied(file),
                    "SELECT asked, COALESCE(typed, '') FROM answer_log WHERE drill ="
                            + " (SELECT id FROM drill ORDER BY nr DESC LIMIT 1) ORDER BY position");
            assertTrue(
                    kept.size() >= counted && kept.size() <= typed.size(), kept + " for " + counted + " of " + typed);
            assertEquals(typed.subList(0, kept.size()), kept);
            return kept.size() - counted;
        }
    }

    private static void join(Thread thread) {
        try {
            thread.join(30_000);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
        assertFalse(thread.isAlive());
    }

    /** The file once a program has opened it and closed it again, as the next start does. */
    private static Path tidied(Path file) {
        Store.open(file).close();
        return file;
    }
}
