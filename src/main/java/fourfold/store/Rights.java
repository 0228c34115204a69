// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Makes files and folders that only their owner can read, where the system knows such rights. */
public final class Rights {
    private Rights() {}

    /** Makes an empty file for its owner alone (mode 0600); false if there was one already. */
    public static boolean makeFile(Path file) throws IOException {
        try {
            Files.createFile(file, ownersOnly(file, "rw-------"));
            return true;
        } catch (FileAlreadyExistsException e) {
            return false;
        }
    }

    /** Makes a folder for its owner alone (mode 0700), with those above it, unless it is there. */
    public static void makeFolder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder, ownersOnly(folder, "rwx------"));
        }
    }

    /** Takes a file's rights from everybody but its owner. */
    static void keepToOwner(Path file) throws IOException {
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
    }

    private static FileAttribute<?>[] ownersOnly(Path path, String rights) {
        boolean known = path.getFileSystem().supportedFileAttributeViews().contains("posix");
        return known
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }
}
