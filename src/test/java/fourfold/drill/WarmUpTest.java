// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.NumberToCopy;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Guards against a warm-up that gives products away, or that goes on when the hands are known. */
class WarmUpTest {
    @Test
    void noNumberToCopyIsAProductToBeLearned() {
        for (long seed = 0; seed < 500; seed++) {
            List<NumberToCopy> numbers = WarmUp.numbers(false, seed);
            assertEquals(10, numbers.size());
            for (NumberToCopy number : numbers) {
                int n = number.expected();
                assertFalse(Families.all().stream().anyMatch(f -> f.low() > 1 && f.product() == n), "a product: " + n);
            }
        }
    }

    @Test
    void handsThatAreKnownCopyNothingOnThreeDaysOfFour() {
        int none = 0;
        for (long seed = -200; seed < 200; seed++) {
            List<NumberToCopy> numbers = WarmUp.numbers(true, seed);
            assertTrue(numbers.isEmpty() || numbers.size() == 4);
            none += numbers.isEmpty() ? 1 : 0;
        }
        assertEquals(300, none);
    }
}
