// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Child;
import fourfold.store.Store;
import fourfold.terminal.PtyProgram;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against an answer that was shown as counted and is not found by every way to the file after the program was
 * killed: the packaged jar in a pseudo-terminal, killed with SIGKILL, half of the times at any moment and half of them
 * just after Enter, while another program reads or holds the file. Each {@link Way} is gone on a copy of all that the
 * kill left, so that none repairs for the next; the next drill goes on from what was left itself.
 *
 * <p>Four kills; more with {@code mvn verify -Dit.test=KilledDrillEndToEnd -Dfourfold.kills=200}.
 */
@Execution(ExecutionMode.CONCURRENT)
class KilledDrillEndToEnd {
    /** What another program does at the file, and when. */
    private enum Company {
        NONE,
        HOLDS_DURING,
        READS_DURING,
        READS_AFTER,
        HOLDS_AFTER,
        READS_BEFORE,
        HOLDS_BEFORE;

        Bystander.Doing doing() {
            return name().startsWith("READS") ? Bystander.Doing.READS : Bystander.Doing.HOLDS;
        }

        boolean is(String when) {
            return name().endsWith(when);
        }
    }

    private static final int HANDS = 2;
    private static final int KILLS = (Integer.getInteger("fourfold.kills", 4) + HANDS - 1) / HANDS;
    private static final long LONGEST_NANOS = 2_500_000_000L;
    private static final long SHORT_NANOS = 30_000_000L;

    private static final KillTally TALLY = new KillTally();

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    @Execution(ExecutionMode.CONCURRENT)
    void everyAnswerShownAsCountedIsFoundByEveryWay(int hand) {
        Path file = LeftBehind.emptyFolder(folder.resolve("hand " + hand)).resolve("family.db");
        try (Store store = Store.open(file)) {
            store.add(new Child(new UUID(7, hand), "Mina", Practised.BEGAN));
        }
        SplittableRandom random = new SplittableRandom(hand);
        List<String> counted = new ArrayList<>();
        List<String> typed = new ArrayList<>();
        try (Bystander bystander = Bystander.start()) {
            for (int kill = 0; kill < KILLS; kill++) {
                Company company = Company.values()[(kill * HANDS + hand) % Company.values().length];
                new Kill(file, company, bystander, random.split())
                        .andLook(counted, typed, folder.resolve("kill " + hand));
            }
        }
        assertTrue(TALLY.troubles().isEmpty(), () -> String.join("\n", TALLY.troubles()));
    }

    @AfterAll
    static void tell() {
        System.out.println(TALLY);
    }

    /** One kill. */
    private record Kill(Path file, Company company, Bystander bystander, SplittableRandom random) {
        /**
         * Kills and goes all the ways.
         *
         * @param counted what was shown as counted before; more is added
         * @param typed what was typed, some of it perhaps in vain; more is added
         */
        void andLook(List<String> counted, List<String> typed, Path place) {
            PtyChild child = killed();
            LeftBehind left = LeftBehind.of(file, place);
            bystander.letGo();
            String drill = left.drill();
            List<String> now = IntStream.range(0, child.replies().size())
                    .mapToObj(i -> line(drill, i + 1, child.replies().get(i)))
                    .toList();
            counted.addAll(now.subList(0, child.counted()));
            typed.addAll(now);
            KillTally.Look look = TALLY.kill(company.name(), child.counted());
            for (Way way : Way.values()) {
                go(left, way, look).ifPresent(found -> look.check(way, counted, typed, found));
            }
            left.remove();
        }

        /** With another program there, the way may be barred as long as it is. */
        private Optional<List<String>> go(LeftBehind left, Way way, KillTally.Look look) {
            if (company.is("AFTER")) {
                Path copy = left.copy(way.name());
                if (company.doing() == Bystander.Doing.HOLDS) {
                    bystander.takeFor(200, company.doing(), copy);
                } else {
                    bystander.take(company.doing(), copy);
                }
                try {
                    return Optional.of(way.found(copy, left.scratch(way.name())));
                } catch (Way.NoWay e) {
                    look.barred(way, String.valueOf(e.getMessage()));
                } finally {
                    bystander.letGo();
                }
            }
            try {
                return Optional.of(way.found(left.copy(way + " alone"), left.scratch(way + " alone")));
            } catch (Way.NoWay e) {
                look.trouble(way, String.valueOf(e.getMessage()));
                return Optional.empty();
            }
        }

        private PtyChild killed() {
            List<String> command = PackagedProgramEndToEnd.fourfold("drill", "--minutes", "5");
            try (PtyProgram program = PtyProgram.start(Map.of("FOURFOLD_STORE", file.toString()), 80, 24, command)) {
                PtyChild child = new PtyChild(program);
                child.answer(1 + random.nextInt(2));
                Thread playing = new Thread(child::playOn);
                long nanos = random.nextLong(LONGEST_NANOS);
                if (company.is("BEFORE")) {
                    bystander.take(company.doing(), file);
                }
                playing.start();
                LockSupport.parkNanos(random.nextLong(nanos + 1));
                if (company.is("BEFORE")) {
                    bystander.letGo();
                } else if (company.is("DURING")) {
                    bystander.take(company.doing(), file);
                }
                if (random.nextBoolean()) {
                    int typed = child.typed();
                    await(() -> child.typed() > typed);
                    LockSupport.parkNanos(random.nextLong(SHORT_NANOS));
                } else {
                    LockSupport.parkNanos(random.nextLong(nanos + 1));
                }
                ProcessHandle.of(program.pid()).orElseThrow().destroyForcibly();
                program.exitCode();
                // What the screen showed last is looked at once more.
                program.awaitEndOfOutput();
                child.stop();
                join(playing);
                return child;
            }
        }

        private static String line(String drill, int position, PtyChild.Reply reply) {
            return drill + " " + position + ": " + reply.asked() + " -> " + reply.typed();
        }

        /** At most as long as no patience with a held file ends. */
        private static void await(BooleanSupplier holds) {
            long until = System.nanoTime() + LONGEST_NANOS;
            while (!holds.getAsBoolean() && System.nanoTime() < until) {
                LockSupport.parkNanos(1_000_000);
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
    }
}
