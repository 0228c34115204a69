// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Recognises our files by their first hundred bytes, without opening it as a database: opening another
 * program's database could already change it. The layout is that of the SQLite file format: sixteen bytes of text, and
 * the application's number at byte 68. Not for a file that this program has open as a database: closing it after such a
 * look would give the library's locks away (fcntl(2)).
 */
public enum FileHead {
    /** An empty file; it becomes a store. */
    EMPTY,
    /** A store. */
    OURS,
    /** An SQLite database of another program. */
    OTHER_DATABASE,
    /** No SQLite database. */
    NO_DATABASE;

    /** The number that marks a store: the letters Four. */
    static final int APPLICATION = 0x466f7572;

    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int LENGTH = 100;
    private static final int APPLICATION_AT = 68;
    private static final int READ_VERSION_AT = 19;
    private static final int LOGGED = 2;

    /** Whether the file is kept with a write-ahead log. */
    public static boolean isLogged(Path file) throws IOException {
        byte[] head = head(file);
        return head.length == LENGTH && head[READ_VERSION_AT] == LOGGED;
    }

    private static byte[] head(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(LENGTH);
        }
    }

    /**
     * What the file is by its first hundred bytes.
     *
     * @throws IOException if there is no such file or it can't be read
     */
    public static FileHead of(Path file) throws IOException {
        byte[] head = head(file);
        if (head.length == 0) {
            return EMPTY;
        }
        if (head.length < LENGTH || !Arrays.equals(Arrays.copyOf(head, MAGIC.length), MAGIC)) {
            return NO_DATABASE;
        }
        return ByteBuffer.wrap(head).getInt(APPLICATION_AT) == APPLICATION ? OURS : OTHER_DATABASE;
    }
}
