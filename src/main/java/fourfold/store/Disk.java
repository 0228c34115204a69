// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * What is done to whole files where one takes another's place, one step a method. A program may be killed between any two
 * of them; so a test can stop before each.
 */
public class Disk {
    /** The system's own. */
    public static final Disk REAL = new Disk();

    /** Fills a new or empty file with another's bytes and returns when they are on the disk. */
    public void fill(Path from, Path to) throws IOException {
        try (FileChannel in = FileChannel.open(from, StandardOpenOption.READ);
                FileChannel out =
                        FileChannel.open(to, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            long at = 0;
            while (at < in.size()) {
                at += in.transferTo(at, in.size() - at, out);
            }
            out.force(true);
        }
    }

    /** Gives a file a second name; where the disk knows no such names, it is copied. */
    public void link(Path from, Path to) throws IOException {
        Files.deleteIfExists(to);
        try {
            Files.createLink(to, from);
        } catch (IOException | UnsupportedOperationException e) {
            Files.copy(from, to, StandardCopyOption.COPY_ATTRIBUTES);
            DatabaseCopy.force(to);
        }
        DatabaseCopy.forceFolder(to);
    }

    /** Gives a file another name in one step, replacing what had that name. */
    public void rename(Path from, Path to) throws IOException {
        DatabaseCopy.name(from, to);
    }

    /** Takes a file away, if it is there. */
    public void delete(Path file) throws IOException {
        if (Files.deleteIfExists(file)) {
            DatabaseCopy.forceFolder(file);
        }
    }
}
