// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Guards against bytes that make the key decoder fall over, stick, or type what nobody typed. More with
 * {@code -Dfourfold.bytes=10000000}.
 */
class RandomBytesTest {
    private static final int BYTES = Integer.getInteger("fourfold.bytes", 500_000);
    private static final String LIKELY = "\u001b\u001b\u001b[[O\u009bMP]~;?019A\u0007\\\r\u007f";

    @Test
    void anyBytesBecomeKeysAndAfterASilenceALetterIsALetter() {
        SplittableRandom dice = new SplittableRandom(5);
        KeyDecoder decoder = new KeyDecoder();
        int since = 0;
        int keys = 0;
        for (int i = 0; i < BYTES; i++) {
            decoder.take(
                    dice.nextBoolean() ? LIKELY.charAt(dice.nextInt(LIKELY.length())) : (char) dice.nextInt(0x10000));
            since++;
            keys += drained(decoder);
            if (dice.nextInt(200) == 0) {
                decoder.silence();
                keys += drained(decoder);
                assertTrue(keys <= since + 1, keys + " keys from " + since + " characters");
                assertEquals(java.time.Duration.ZERO, decoder.patience());
                decoder.take('x');
                assertEquals(Optional.of(new KeyStroke('x', false, false)), decoder.next());
                since = 0;
                keys = 0;
            }
        }
    }

    private static int drained(KeyDecoder decoder) {
        int count = 0;
        for (Optional<KeyStroke> key = decoder.next(); key.isPresent(); key = decoder.next()) {
            KeyType type = key.get().getKeyType();
            assertTrue(type != KeyType.EOF && type != null, "the terminal did not close");
            Key.of(key.get());
            count++;
        }
        return count;
    }
}
