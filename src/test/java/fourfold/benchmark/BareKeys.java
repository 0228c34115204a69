// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The floor of timing and of painting: a program that writes some bytes, reads keys, and answers each key with some bytes,
 * with nothing between it and the terminal. It notes the time from each picture to the first key and to Enter.
 */
final class BareKeys {
    private BareKeys() {}

    /** The file for the notes, and how many bytes to answer with. Ctrl-C ends. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        new ProcessBuilder("sh", "-c", "stty -icanon -echo -isig min 1 time 0")
                .redirectInput(ProcessBuilder.Redirect.INHERIT)
                .start()
                .waitFor();
        StringBuilder notes = new StringBuilder();
        byte[] picture = ".".repeat(Integer.parseInt(arguments[1])).getBytes(StandardCharsets.US_ASCII);
        try (InputStream in = new FileInputStream(FileDescriptor.in);
                OutputStream out = new FileOutputStream(FileDescriptor.out)) {
            out.write("ready".getBytes(StandardCharsets.US_ASCII));
            out.write(picture);
            long shown = System.nanoTime();
            long first = 0;
            for (int key = in.read(); key >= 0 && key != 3; key = in.read()) {
                long now = System.nanoTime();
                first = first == 0 ? now : first;
                out.write(picture);
                if (key == '\r' || key == '\n') {
                    notes.append(first - shown).append(' ').append(now - shown).append('\n');
                    first = 0;
                    shown = System.nanoTime();
                }
            }
        }
        Files.writeString(Path.of(arguments[0]), notes);
    }
}
