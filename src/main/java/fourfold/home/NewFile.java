package fourfold.home;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

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
        boolean made = false;
        boolean whole = false;
        try (BufferedWriter writer =
                Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
            made = true;
            content.to(writer);
            writer.flush();
            whole = true;
        } finally {
            if (made && !whole) {
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
