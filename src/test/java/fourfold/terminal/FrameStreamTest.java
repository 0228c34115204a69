// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Guards against a frame sent in a thousand pieces, or after the terminal was given back. */
class FrameStreamTest {
    private final List<String> writes = new ArrayList<>();
    private boolean gone;

    private final FrameStream frames = new FrameStream(new OutputStream() {
        @Override
        public void write(int b) {
            throw new AssertionError("one byte by itself");
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            if (gone) {
                throw new IOException("nobody reads");
            }
            writes.add(new String(bytes, offset, length, StandardCharsets.US_ASCII));
        }
    });

    @Test
    void aFrameIsOneWrite() {
        for (int i = 0; i < 1_950; i++) {
            frames.write("x");
        }
        frames.write('y');
        frames.flush();
        frames.flush();
        assertEquals(List.of("x".repeat(1_950) + "y"), writes);
    }

    @Test
    void afterTheFarewellNothingFollowsUntilItIsReopened() {
        frames.write("half a frame");
        frames.shut("farewell");
        frames.write("late");
        frames.flush();
        frames.shut("twice");
        assertEquals(List.of("farewell"), writes);
        frames.reopen();
        frames.write("again");
        frames.flush();
        assertEquals(List.of("farewell", "again"), writes);
    }

    @Test
    void aReaderWhoIsGoneIsRememberedAndNoError() {
        assertFalse(frames.broken());
        gone = true;
        frames.write("frame");
        frames.flush();
        assertTrue(frames.broken());
    }
}
