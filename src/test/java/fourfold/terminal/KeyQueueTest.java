// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Guards against a paste of which the first keys are taken for an answer because the rest was not handed over yet. */
class KeyQueueTest {
    private static final long MS = 1_000_000L;

    private long now;
    private final KeyQueue keys = new KeyQueue(() -> now += MS, KeyQueue.Waiting.LIVE);

    private static List<KeyPress> piece(int keys, long nanos) {
        return LongStream.range(0, keys)
                .mapToObj(i -> new KeyPress(new KeyStroke('7', false, false), nanos))
                .toList();
    }

    @Test
    void keysOfOnePieceAreSeenTogetherHoweverLateTheyAreAskedFor() {
        List<KeyPress> many = new ArrayList<>(piece(PasteGuard.MOST + 1, 0));
        many.add(1, new KeyPress(new KeyStroke(KeyType.Enter), 0));
        keys.add(many);
        now = 40 * MS;
        assertEquals(Optional.empty(), keys.next(Duration.ZERO), "answers are not pasted");
        keys.add(piece(2, 200 * MS));
        now = 300 * MS;
        assertEquals(Optional.of(200 * MS), keys.next(Duration.ZERO).map(KeyPress::nanos));
        assertEquals(Optional.of(200 * MS), keys.next(Duration.ZERO).map(KeyPress::nanos));
        assertEquals(Optional.empty(), keys.next(Duration.ZERO));
    }

    @Test
    void oneLineInOnePieceIsOneKeyWithItsText() {
        keys.add(piece(4, 0));
        now = 40 * MS;
        assertEquals(
                Optional.of(new Key(Key.Kind.PASTE, '\0', "7777")),
                keys.next(Duration.ZERO).map(press -> Key.of(press.key())));
        assertEquals(Optional.empty(), keys.next(Duration.ZERO));
    }
}
