package fourfold.home;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
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
     * @param what what it holds, as in "the answers"
     * @throws UncheckedIOException with one line that says what failed, which file, and what to do
     */
    public static void write(Path file, String what, Content content) {
        boolean made = false;
        boolean whole = false;
        try (BufferedWriter writer =
                Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
            made = true;
            content.to(writer);
            writer.flush();
            whole = true;
        } catch (FileAlreadyExistsException e) {
            throw new UncheckedIOException(
                    "The file " + file + " is already there. Choose another name or remove it first.", e);
        } catch (IOException e) {
            throw new UncheckedIOException(
                    Character.toUpperCase(what.charAt(0)) + what.substring(1) + " could not be written to " + file
                            + ": " + reason(e) + ". Name another file.",
                    e);
        } finally {
            if (made && !whole) {
                remove(file);
            }
        }
    }

    private static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such folder";
        }
        if (e instanceof AccessDeniedException) {
            return "the system does not allow it";
        }
        return e instanceof FileSystemException system && system.getReason() != null
                ? system.getReason()
                : String.valueOf(e.getMessage());
    }

    /** Half a file would be taken for a whole one. */
    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The failure before this one is already being told.
        }
    }
}
