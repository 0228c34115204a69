// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import fourfold.terminal.TerminalSession;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Guards against work on the file that is done out of order, cut off at the end, or done and not noticed. */
class FileWorkTest {
    private static final Duration LONG = Duration.ofMinutes(2);

    private static boolean await(CountDownLatch latch) {
        try {
            latch.await();
            return true;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void allThatWasBegunIsDoneInOrderBeforeItIsClosed() {
        List<Integer> done = new ArrayList<>();
        List<Future<Boolean>> begun = new ArrayList<>();
        try (FileWork work = new FileWork()) {
            for (int i = 0; i < 1000; i++) {
                int number = i;
                begun.add(work.begin(() -> done.add(number)));
            }
        }
        assertTrue(begun.stream().allMatch(Future::isDone));
        assertEquals(IntStream.range(0, 1000).boxed().toList(), done);
    }

    @Test
    void whoeverWaitsForAKeyIsWokenWhenItIsDoneAndFindsItDone() {
        try (FileWork work = new FileWork();
                TerminalSession stage =
                        TerminalSession.on(new DefaultVirtualTerminal(new TerminalSize(40, 12)), true, true)) {
            work.onDone(stage::wake);
            for (int i = 0; i < 200; i++) {
                CountDownLatch held = new CountDownLatch(1);
                Future<Boolean> done = work.begin(() -> await(held));
                assertFalse(done.isDone());
                long before = System.nanoTime();
                held.countDown();
                assertEquals(Optional.empty(), stage.next(LONG));
                assertTrue(System.nanoTime() - before < LONG.toNanos());
                assertTrue(done.isDone());
            }
        }
    }

    @Test
    void whatFailsIsToldToWhoeverBeganItAndTheRestIsDone() throws Exception {
        try (FileWork work = new FileWork()) {
            IllegalStateException failure = new IllegalStateException("unforeseen");
            Future<Boolean> fails = work.begin(() -> {
                throw failure;
            });
            Future<Integer> works = work.begin(() -> 56);
            assertEquals(56, works.get());
            assertSame(
                    failure, assertThrows(ExecutionException.class, fails::get).getCause());
            assertTrue(work.finish(LONG));
        }
    }

    @Test
    void itSaysWhenItIsNotDoneInTime() {
        try (FileWork work = new FileWork()) {
            CountDownLatch held = new CountDownLatch(1);
            Future<Boolean> begun = work.begin(() -> await(held));
            assertFalse(work.finish(Duration.ofMillis(1)));
            held.countDown();
            assertTrue(work.finish(LONG));
            assertTrue(begun.isDone());
        }
    }
}
