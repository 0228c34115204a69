// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a program did to a folder, change by change, as {@code src/test/c/faults.c} wrote it down. */
final class DiskTrace {
    /** A change of the folder. */
    enum What {
        MADE('C'),
        CUT('Z'),
        WRITTEN('W'),
        FORCED('S'),
        NOT_FORCED('F'),
        REMOVED('U'),
        RENAMED('R'),
        LINKED('L'),
        FOLDER_MADE('D'),
        FOLDER_REMOVED('X');

        private final char letter;

        What(char letter) {
            this.letter = letter;
        }

        static What of(byte letter) {
            for (What what : values()) {
                if (what.letter == letter) {
                    return what;
                }
            }
            throw new IllegalArgumentException("no change is called " + letter);
        }
    }

    /**
     * One change.
     *
     * @param path the file or folder
     * @param other its new name; empty if it has none
     * @param file the file's number; a number is given again when its file is gone
     * @param at where it was written, or the length it was cut to; 1 if a folder was forced
     * @param bytes what was written
     * @param end how long the trace is after it
     */
    record Change(What what, Path path, String other, long file, long at, ByteBuffer bytes, long end) {}

    private DiskTrace() {}

    static List<Change> read(Path trace, long from) throws IOException {
        ByteBuffer all = ByteBuffer.wrap(Files.readAllBytes(trace)).order(ByteOrder.nativeOrder());
        all.position((int) from);
        List<Change> changes = new ArrayList<>();
        while (all.hasRemaining()) {
            What what = What.of(all.get());
            Path path = Path.of(text(all));
            String other = text(all);
            long file = all.getLong();
            long at = all.getLong();
            int length = all.getInt();
            ByteBuffer bytes = all.slice(all.position(), length);
            all.position(all.position() + length);
            changes.add(new Change(what, path, other, file, at, bytes, all.position()));
        }
        return changes;
    }

    private static String text(ByteBuffer all) {
        byte[] text = new byte[Short.toUnsignedInt(all.getShort())];
        all.get(text);
        return new String(text, StandardCharsets.UTF_8);
    }
}
