// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Gathers a frame and hands it on in one write when flushed.
 *
 * <p>It can be shut: a frame half drawn is dropped, a farewell goes out, and nothing that another thread still draws can
 * follow it. A reader that has gone away is remembered and no error: there is nobody left to report to.
 */
final class FrameStream extends OutputStream {
    private final OutputStream out;
    private final ByteArrayOutputStream frame = new ByteArrayOutputStream(16_384);
    private boolean open = true;
    private volatile boolean broken;

    FrameStream(OutputStream out) {
        this.out = out;
    }

    @Override
    public synchronized void write(int b) {
        if (open) {
            frame.write(b);
        }
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
        if (open) {
            frame.write(bytes, offset, length);
        }
    }

    /** Adds a text of ASCII characters. */
    void write(String ascii) {
        byte[] bytes = ascii.getBytes(StandardCharsets.US_ASCII);
        write(bytes, 0, bytes.length);
    }

    @Override
    public synchronized void flush() {
        if (frame.size() > 0 && !broken) {
            try {
                out.write(frame.toByteArray());
                out.flush();
            } catch (IOException e) {
                broken = true;
            }
        }
        frame.reset();
    }

    /** Drops what was not flushed, sends {@code farewell} and swallows everything after it; once. */
    synchronized void shut(String farewell) {
        if (open) {
            frame.reset();
            write(farewell);
            flush();
            open = false;
        }
    }

    /** Lets frames through again. */
    synchronized void reopen() {
        open = true;
    }

    /** Whether a write has failed. */
    boolean broken() {
        return broken;
    }
}
