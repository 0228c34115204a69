// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import com.pty4j.PtyProcess;
import com.pty4j.PtyProcessBuilder;
import fourfold.terminal.PtyProgram;
import fourfold.terminal.ScreenModel;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A program in a pseudo-terminal whose every output is stamped when it arrives, on the monotonic clock that a Java program
 * on the same machine reads too (Linux: both are CLOCK_MONOTONIC).
 */
final class TimedPty implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 60_000;

    /** The question that ends those about colours: the primary device attributes (ECMA-48). */
    private static final String ASKED = "\u001b[c";

    /** White letters on black, as a VT220 with colours: what xterm replies in well under a millisecond. */
    private static final String REPLY =
            "\u001b]10;rgb:ffff/ffff/ffff\u0007\u001b]11;rgb:0000/0000/0000\u0007\u001b[?62;22c";

    private final long started;
    private final PtyProcess process;
    private final ScreenModel model;
    private final StringBuilder sent = new StringBuilder();
    private long lastArrival;
    private boolean closed;

    private TimedPty(long started, PtyProcess process, ScreenModel model) {
        this.started = started;
        this.process = process;
        this.model = model;
        Thread reader = new Thread(this::read, "timed pty");
        reader.setDaemon(true);
        reader.start();
    }

    static TimedPty start(Map<String, String> environment, int columns, int rows, List<String> command)
            throws IOException {
        Map<String, String> all = new HashMap<>(Map.of(
                "PATH", System.getenv("PATH"), "HOME", System.getProperty("user.home"), "TERM", "xterm-256color"));
        all.putAll(Map.of("LANG", "C.UTF-8", "CLASSPATH", PtyProgram.classPath(), "COLORTERM", "truecolor"));
        all.putAll(environment);
        PtyProcessBuilder builder = new PtyProcessBuilder(command.toArray(String[]::new))
                .setEnvironment(all)
                .setInitialColumns(columns)
                .setInitialRows(rows);
        long now = System.nanoTime();
        return new TimedPty(now, builder.start(), new ScreenModel(columns, rows));
    }

    private void read() {
        byte[] chunk = new byte[65_536];
        try (InputStream in = process.getInputStream()) {
            for (int length = in.read(chunk); length > 0; length = in.read(chunk)) {
                long now = System.nanoTime();
                if (new String(chunk, 0, length, StandardCharsets.ISO_8859_1).contains(ASKED)) {
                    type(REPLY);
                }
                synchronized (this) {
                    lastArrival = now;
                    model.accept(Arrays.copyOf(chunk, length));
                    sent.append(new String(chunk, 0, length, StandardCharsets.ISO_8859_1));
                    notifyAll();
                }
            }
        } catch (IOException e) {
            // Linux says so when the program's side is closed.
        }
        synchronized (this) {
            closed = true;
            notifyAll();
        }
    }

    /** When the command was started. */
    long started() {
        return started;
    }

    /** Waits until the screen shows it; gives when the output arrived that made it so. */
    synchronized long when(Predicate<String> shown) {
        long until = System.nanoTime() + PATIENCE_MILLIS * 1_000_000;
        while (!shown.test(model.text())) {
            if (closed || System.nanoTime() > until) {
                throw new IllegalStateException("never shown; the screen shows:\n" + model.text());
            }
            pause(1000);
        }
        return lastArrival;
    }

    long whenShown(String words) {
        return when(text -> text.contains(words));
    }

    /** What is shown. */
    synchronized String text() {
        return model.text();
    }

    /** Everything sent since the start, each byte a character. */
    synchronized String sent() {
        return sent.toString();
    }

    /** How many bytes were sent so far. */
    synchronized int length() {
        return sent.length();
    }

    /** When the last output arrived. */
    synchronized long lastArrival() {
        return lastArrival;
    }

    /** Waits at most so long for output beyond the first {@code length} bytes; false if none came. */
    synchronized boolean moreThan(int length, long millis) {
        long until = System.nanoTime() + millis * 1_000_000;
        while (sent.length() <= length) {
            long left = until - System.nanoTime();
            if (left <= 0 || closed) {
                return false;
            }
            pause(Math.max(1, left / 1_000_000));
        }
        return true;
    }

    @SuppressWarnings("WaitNotInLoop") // Every caller looks again.
    private void pause(long millis) {
        try {
            wait(millis);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Types; gives the moment just before the write and just after it. */
    long[] type(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        try {
            long before = System.nanoTime();
            process.getOutputStream().write(bytes);
            process.getOutputStream().flush();
            return new long[] {before, System.nanoTime()};
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    long pid() {
        return process.pid();
    }

    /** Waits for the end of the program. */
    int exitCode() {
        try {
            return process.waitFor();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
