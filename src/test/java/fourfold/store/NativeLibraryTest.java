// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.OSInfo;

/** Guards against a cache that fills up, holds half a library, or keeps the program from starting. */
class NativeLibraryTest {
    @TempDir
    private Path cache = Path.of("");

    /** Another driver's library under this one's name would be loaded, and refused. */
    @Test
    void theFolderIsNamedByTheDriversOwnVersion() {
        assertEquals(SQLiteJDBCLoader.getVersion(), NativeLibrary.VERSION);
    }

    @Test
    void theLibraryIsUnpackedOnceAndWhole() throws IOException {
        Path folder = NativeLibrary.unpacked(cache);
        Path library = folder.resolve(System.mapLibraryName("sqlitejdbc"));
        String packed = "/org/sqlite/native/" + OSInfo.getNativeLibFolderPathForCurrentOS() + "/"
                + System.mapLibraryName("sqlitejdbc");
        try (InputStream in = Objects.requireNonNull(SQLiteJDBCLoader.class.getResourceAsStream(packed))) {
            assertArrayEquals(in.readAllBytes(), Files.readAllBytes(library));
        }
        FileTime first = Files.getLastModifiedTime(library);
        assertEquals(folder, NativeLibrary.unpacked(cache));
        assertEquals(first, Files.getLastModifiedTime(library));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(
                    Set.of(library, folder.resolve(library.getFileName() + ".crc32c")),
                    Set.copyOf(files.toList()),
                    "nothing half done is left");
        }
    }

    @Test
    void aSpoiltLibraryIsUnpackedAnew() throws IOException {
        Path library = NativeLibrary.unpacked(cache).resolve(System.mapLibraryName("sqlitejdbc"));
        byte[] whole = Files.readAllBytes(library);
        byte[] spoilt = whole.clone();
        spoilt[whole.length / 2] ^= 1;
        Files.write(library, spoilt);
        NativeLibrary.unpacked(cache);
        assertArrayEquals(whole, Files.readAllBytes(library));
        Files.write(library, java.util.Arrays.copyOf(whole, 5_000));
        NativeLibrary.unpacked(cache);
        assertArrayEquals(whole, Files.readAllBytes(library));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aLibraryThatOthersCouldHavePutThereIsNotLoaded() throws IOException {
        Path folder = NativeLibrary.unpacked(cache);
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxrwx"));
        assertThrows(IOException.class, () -> NativeLibrary.unpacked(cache));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        Path library = folder.resolve(System.mapLibraryName("sqlitejdbc"));
        Path elsewhere = Files.move(library, cache.resolve("elsewhere"));
        Files.createSymbolicLink(library, elsewhere);
        assertThrows(IOException.class, () -> NativeLibrary.unpacked(cache));
    }

    @Test
    void copiesOfOtherVersionsGoWhenNobodyHasTouchedThemForADay() throws IOException {
        Path old = version("sqlite-1-any", Duration.ofDays(2));
        Path recent = version("sqlite-2-any", Duration.ofHours(2));
        Path foreign = version("something-else", Duration.ofDays(2));
        Path current = NativeLibrary.unpacked(cache);
        assertFalse(Files.exists(old));
        assertTrue(Files.exists(recent));
        assertTrue(Files.exists(foreign));
        assertTrue(Files.exists(current));
    }

    @Test
    void aCacheThatCanNotBeWrittenIsNoObstacle() throws IOException {
        Path inTheWay = Files.writeString(cache.resolve("file"), "x");
        assertThrows(IOException.class, () -> NativeLibrary.unpacked(inTheWay.resolve("cache")));
        NativeLibrary.prepare(inTheWay.resolve("cache"));
        Store.open(cache.resolve("any.db")).close();
    }

    private Path version(String name, Duration age) throws IOException {
        Path folder = Files.createDirectories(cache.resolve(name));
        Files.writeString(folder.resolve("library"), "x");
        Files.setLastModifiedTime(folder, FileTime.from(Instant.now().minus(age)));
        return folder;
    }
}
