// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Standard output that knows whether its reader went away, as {@code head} does when it has enough. That is no failure:
 * a program in C would be ended by the signal SIGPIPE without a word (POSIX.1-2017, write()), which Java ignores.
 */
final class StandardOutput extends FilterOutputStream {
    private boolean closedByReader;

    StandardOutput(OutputStream out) {
        super(out);
    }

    boolean isClosedByItsReader() {
        return closedByReader;
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            closedByReader |= isOfAPipe(e);
            throw e;
        }
    }

    /** The system says it in its own language; where the process's files can be looked at, what is written to is asked. */
    private static boolean isOfAPipe(IOException failure) {
        try {
            return Files.readSymbolicLink(Path.of("/proc/self/fd/1")).toString().startsWith("pipe:");
        } catch (IOException | UnsupportedOperationException e) {
            return String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT).contains("pipe");
        }
    }
}
