// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** How the terminal treats keys, read and set by the system's own {@code stty} on standard input. */
final class TerminalModes {
    /**
     * Every key arrives at once and unseen: no line editing, no echo, no signals, no flow control. One process, so that
     * ending it ends all of it.
     */
    private static final String RAW = "exec stty -icanon -echo -isig -ixon -iexten icrnl min 1 time 0";

    private final String found;
    private final Optional<TerminalSize> sizeFound;
    /** True from the start: to restore what was not yet changed does no harm, and a signal may come at any time. */
    private boolean raw = true;
    /** The process that is just making the terminal raw. */
    private Optional<Process> taking = Optional.empty();

    private boolean left;

    /** Found by {@link #find} and not yet taken over. */
    private static Optional<TerminalModes> ahead = Optional.empty();

    private TerminalModes(String found, Optional<TerminalSize> sizeFound) {
        this.found = found;
        this.sizeFound = sizeFound;
    }

    /** Those of no terminal at all: nothing is changed and nothing put back. */
    static TerminalModes none() {
        TerminalModes modes = new TerminalModes("", Optional.empty());
        modes.left = true;
        modes.raw = false;
        return modes;
    }

    /** Looks ahead what {@link #asFound} is about to be asked for, which changes nothing; any thread may call it. */
    static synchronized void find() {
        try {
            ahead = Optional.of(look());
        } catch (IOException e) {
            // No terminal, which whoever opens it is told.
            ahead = Optional.empty();
        }
    }

    /** Remembers the modes and the size as they are now, or were a moment ago when they were looked at ahead. */
    static synchronized TerminalModes asFound() throws IOException {
        TerminalModes modes = ahead.isPresent() ? ahead.get() : look();
        ahead = Optional.empty();
        return modes;
    }

    /** With one process, as each takes a start's time. */
    private static TerminalModes look() throws IOException {
        String both = run("stty -g && stty size");
        int end = both.indexOf('\n');
        String found = end < 0 ? both : both.substring(0, end);
        // The text goes back through a shell, so only what stty writes may be in it.
        if (!found.chars().allMatch(TerminalModes::isOfModes) || found.isEmpty()) {
            throw new IOException("stty -g gave no modes");
        }
        return new TerminalModes(found, size(end < 0 ? "" : both.substring(end + 1)));
    }

    private static boolean isOfModes(int c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == ':' || c == '=';
    }

    /** The size when the modes were found. */
    Optional<TerminalSize> sizeFound() {
        return sizeFound;
    }

    /**
     * Makes every key arrive at once, unless the terminal was already left for good. In the background the system stops
     * this, and the whole program, until it is in front again; nothing that ends the program waits for it.
     */
    void makeRaw() throws IOException {
        Process process;
        synchronized (this) {
            if (left) {
                return;
            }
            process = start(RAW);
            taking = Optional.of(process);
        }
        finish(process, RAW);
        synchronized (this) {
            taking = Optional.empty();
            raw = !left;
        }
    }

    /** Puts the modes back as they were found; once. */
    synchronized void restore() throws IOException {
        if (raw) {
            raw = false;
            run("stty " + found);
        }
    }

    /** The same for good: a change on its way is called off, and none can follow. */
    synchronized void leave() throws IOException {
        left = true;
        if (taking.isPresent()) {
            // One that waits in the background for its turn would have it after the modes were put back.
            taking.get().destroyForcibly();
            raw |= code(taking.get(), RAW) == 0;
            taking = Optional.empty();
        }
        restore();
    }

    /** The size of the terminal; empty if it does not know. */
    static Optional<TerminalSize> size() {
        try {
            return size(run("stty size"));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static Optional<TerminalSize> size(String printed) {
        try {
            String[] rowsAndColumns = printed.split(" ", -1);
            TerminalSize size =
                    new TerminalSize(Integer.parseInt(rowsAndColumns[1]), Integer.parseInt(rowsAndColumns[0]));
            return size.getColumns() > 0 && size.getRows() > 0 ? Optional.of(size) : Optional.empty();
        } catch (RuntimeException e) {
            return Optional.empty();
        }
    }

    /** Runs a line of shell on the terminal and returns what it printed, without blanks around it. */
    static String run(String line) throws IOException {
        return finish(start(line), line);
    }

    private static Process start(String line) throws IOException {
        return new ProcessBuilder("sh", "-c", line)
                .redirectInput(Redirect.INHERIT)
                .redirectError(Redirect.DISCARD)
                .start();
    }

    private static String finish(Process process, String line) throws IOException {
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
        int code = code(process, line);
        if (code != 0) {
            throw new IOException("\"" + line + "\" failed with exit code " + code);
        }
        return printed;
    }

    private static int code(Process process, String line) throws IOException {
        try {
            return process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for \"" + line + "\"", e);
        }
    }
}
