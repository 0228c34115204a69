// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.googlecode.lanterna.input.KeyStroke;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Guards against a paste taken for an answer, and against a child's quick keys taken for a paste. */
class PasteGuardTest {
    private static final long MS = 1_000_000L;

    private final PasteGuard guard = new PasteGuard();

    private void press(char c, long nanos) {
        guard.arrive(new KeyPress(new KeyStroke(c, false, false), nanos));
    }

    private static String passed(PasteGuard guard) {
        StringBuilder text = new StringBuilder();
        for (Optional<KeyPress> press = guard.next(); press.isPresent(); press = guard.next()) {
            text.append(press.get().key().getCharacter());
        }
        return text.toString();
    }

    @Test
    void threeKeysAtOnceAreHeldForHalfAMillisecondAndPass() {
        press('5', 0);
        press('6', 0);
        press('E', 0);
        guard.settle(MS / 2);
        assertEquals("", passed(guard));
        assertEquals(Optional.of(java.time.Duration.ofNanos(1)), guard.due(MS / 2));
        guard.settle(MS / 2 + 1);
        assertEquals("56E", passed(guard));
        assertEquals(Optional.empty(), guard.due(3 * MS));
    }

    @Test
    void fourKeysWithinHalfAMillisecondAreDroppedWithAllThatFollowsThem() {
        for (int i = 0; i < 4; i++) {
            press('5', i * MS / 8);
        }
        press('6', 40 * MS);
        press('7', 89 * MS);
        guard.settle();
        assertEquals("", passed(guard));
        press('8', 139 * MS);
        guard.settle();
        assertEquals("8", passed(guard));
    }

    @Test
    void aKeyBeforeAPasteIsNotPartOfIt() {
        press('1', 0);
        for (int i = 0; i < 9; i++) {
            press('5', MS);
        }
        guard.settle();
        assertEquals("1", passed(guard));
    }

    @Property
    void whatAHandCanTypeAllPassesInOrder(
            @ForAll @Size(max = 50) List<@IntRange(min = 1, max = 400) Integer> gapsInMilliseconds) {
        PasteGuard fresh = new PasteGuard();
        StringBuilder typed = new StringBuilder();
        long at = 0;
        for (int gap : gapsInMilliseconds) {
            at += gap * MS;
            char c = (char) ('0' + typed.length() % 10);
            typed.append(c);
            fresh.arrive(new KeyPress(new KeyStroke(c, false, false), at));
        }
        fresh.settle();
        assertEquals(typed.toString(), passed(fresh));
    }
}
