// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Test;

/** Guards against a long calculation for which the file waits, and against an end of which nobody hears. */
class CalculationsTest {
    @Test
    void theFileDoesNotWaitForACalculationAndItsEndWakes()
            throws InterruptedException, ExecutionException, TimeoutException {
        CountDownLatch mayEnd = new CountDownLatch(1);
        CountDownLatch woken = new CountDownLatch(1);
        try (Calculations calculations = new Calculations();
                FileWork file = new FileWork()) {
            calculations.onDone(woken::countDown);
            Future<Integer> slow = calculations.begin(() -> {
                await(mayEnd);
                return 1;
            });
            assertEquals(2, file.begin(() -> 2).get(1, TimeUnit.MINUTES));
            assertEquals(1, woken.getCount());
            mayEnd.countDown();
            assertEquals(1, slow.get(1, TimeUnit.MINUTES));
            assertEquals(true, woken.await(1, TimeUnit.MINUTES));
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await(1, TimeUnit.MINUTES);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
