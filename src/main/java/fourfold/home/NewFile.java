// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.store.Rights;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that a command makes: never over one that is there, and whole or not at all. */
public final class NewFile {
    private NewFile() {}

    /** What is written into it. */
    public interface Content {
        /** Writes all of it. */
        void to(Writer writer) throws IOException;
    }

    /**
     * Makes the file, in UTF-8.
     *
     * @throws IOException as the system says it; a file that is there already is a {@link
     *     java.nio.file.FileAlreadyExistsException}
     */
    public static void write(Path file, Content content) throws IOException {
        // What it holds is a child's, as the store is: for its owner alone, who may give it on.
        if (!Rights.makeFile(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        boolean whole = false;
        try (BufferedWriter writer = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            content.to(writer);
            writer.flush();
            whole = true;
        } finally {
            if (!whole) {
                remove(file);
            }
        }
    }

    /** Half a file would be taken for a whole one. */
    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The failure before this one is already being reported.
        }
    }
}
