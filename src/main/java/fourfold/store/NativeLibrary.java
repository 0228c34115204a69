// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.zip.CRC32C;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.OSInfo;

/**
 * Keeps SQLite's native library unpacked in the program's cache. Left to itself the driver unpacks it into the folder
 * for temporary files at every start, which takes time, and a killed program leaves the copy there for good. If
 * anything fails here the driver goes its own way.
 */
final class NativeLibrary {
    private static final String FOLDER_PROPERTY = "org.sqlite.lib.path";
    private static final String NAME_PROPERTY = "org.sqlite.lib.name";
    private static final String TEMPORARY_PROPERTY = "org.sqlite.tmpdir";
    private static final String NAME = System.mapLibraryName("sqlitejdbc");
    private static final String SUM = NAME + ".crc32c";
    private static final String PREFIX = "sqlite-";

    /** The driver's version; a test compares it with the driver's own word, which takes a start long to look up. */
    static final String VERSION = "3.54.1.0";

    private static final Duration STALE = Duration.ofDays(1);

    private NativeLibrary() {}

    /** Sets the path of the native library for the driver, unpacking it first if need be, unless the user has set one. */
    static synchronized void prepare(Path cache) {
        if (System.getProperty(FOLDER_PROPERTY) != null || System.getProperty(TEMPORARY_PROPERTY) != null) {
            return;
        }
        try {
            System.setProperty(FOLDER_PROPERTY, unpacked(cache).toString());
            System.setProperty(NAME_PROPERTY, NAME);
        } catch (IOException | RuntimeException e) {
            // The driver unpacks its own copy then; slower, but it works.
            System.clearProperty(FOLDER_PROPERTY);
        }
    }

    /** The same with the usual cache of the person who runs the program. */
    static void prepareUsual() {
        String system = System.getProperty("os.name", "");
        Path home = DataPath.home(system, System.getenv(), System.getProperty("user.home", ""));
        Path cache = DataPath.cache(system, System.getenv(), home);
        if (cache.isAbsolute()) {
            prepare(cache);
        }
    }

    /** The folder in the cache that holds the library, unpacked now if it was not there. */
    static Path unpacked(Path cache) throws IOException {
        // The driver's own name for a system takes a process to find out. Two systems that share a home and these
        // words,
        // but no library, do no harm: where the library can't be loaded, the driver unpacks its own.
        String words = System.getProperty("os.name", "") + "-" + System.getProperty("os.arch", "");
        Path folder = cache.resolve(PREFIX + VERSION + "-" + plain(words));
        if (Files.exists(folder)) {
            refuseOthers(folder);
        }
        if (!isWhole(folder)) {
            String system = OSInfo.getNativeLibFolderPathForCurrentOS();
            Rights.makeFolder(folder);
            unpack("/org/sqlite/native/" + system + "/" + NAME, folder);
            removeStale(cache, folder);
        }
        return folder;
    }

    /** With a line for each sign that a folder's name may not have everywhere; by hand, as every start needs it. */
    private static String plain(String words) {
        StringBuilder name = new StringBuilder(words);
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
            if (!letter && !(c >= '0' && c <= '9') && "_.-".indexOf(c) < 0) {
                name.setCharAt(i, '_');
            }
        }
        return name.toString();
    }

    /** A library that somebody else could have put there is not loaded. */
    private static void refuseOthers(Path folder) throws IOException {
        if (!folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        String me = System.getProperty("user.name", "");
        for (Path one : List.of(folder, folder.resolve(NAME))) {
            if (Files.exists(one, LinkOption.NOFOLLOW_LINKS)) {
                PosixFileAttributes now =
                        Files.readAttributes(one, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
                boolean writable = now.permissions().contains(PosixFilePermission.GROUP_WRITE)
                        || now.permissions().contains(PosixFilePermission.OTHERS_WRITE);
                if (now.isSymbolicLink() || writable || !now.owner().getName().equals(me)) {
                    throw new IOException(one + " is not for this person alone");
                }
            }
        }
    }

    /** Whether the library is there as it was unpacked: a spoilt one would be refused by the system at every start. */
    private static boolean isWhole(Path folder) {
        try {
            String sum = Files.readString(folder.resolve(SUM), StandardCharsets.US_ASCII);
            return sum.equals(sum(folder.resolve(NAME)));
        } catch (IOException e) {
            return false;
        }
    }

    private static String sum(Path file) throws IOException {
        CRC32C sum = new CRC32C();
        byte[] all = Files.readAllBytes(file);
        sum.update(all);
        return all.length + " " + Long.toHexString(sum.getValue());
    }

    private static void unpack(String resource, Path folder) throws IOException {
        Path copy = Files.createTempFile(folder, "unpacking-", ".tmp");
        try (InputStream packed = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
            if (packed == null) {
                throw new IOException("the driver has no library for this system");
            }
            Files.copy(packed, copy, StandardCopyOption.REPLACE_EXISTING);
            try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            String sum = sum(copy);
            Files.move(copy, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            Files.writeString(folder.resolve(SUM), sum, StandardCharsets.US_ASCII);
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    /** Removes other versions' copies, and broken ones, that nobody has touched for a day. */
    static void removeStale(Path cache, Path current) throws IOException {
        Instant before = Instant.now().minus(STALE);
        try (DirectoryStream<Path> folders = Files.newDirectoryStream(cache, PREFIX + "*")) {
            for (Path folder : folders) {
                if (!folder.equals(current) && isOlder(folder, before)) {
                    empty(folder);
                    Files.deleteIfExists(folder);
                }
            }
        }
    }

    private static void empty(Path folder) throws IOException {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static boolean isOlder(Path file, Instant moment) throws IOException {
        return Files.getLastModifiedTime(file).toInstant().isBefore(moment);
    }
}
