// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fourfold.words.InEnglish;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Guards against a family's file that lands where nobody looks for it. */
class PlaceTest {
    private static final Path HOME = Path.of("/home/ana");

    @Test
    void linuxFollowsTheXdgBaseDirectorySpecification() {
        // XDG Base Directory Specification 0.8: unset or empty means ~/.local/share, and relative paths are ignored.
        assertEquals(Path.of("/home/ana/.local/share/fourfold/fourfold.db"), DataPath.usual("Linux", Map.of(), HOME));
        assertEquals(
                Path.of("/data/fourfold/fourfold.db"), DataPath.usual("Linux", Map.of("XDG_DATA_HOME", "/data"), HOME));
        for (String ignored : new String[] {"", "data", "./data"}) {
            assertEquals(
                    Path.of("/home/ana/.local/share/fourfold/fourfold.db"),
                    DataPath.usual("Linux", Map.of("XDG_DATA_HOME", ignored), HOME));
        }
    }

    @Test
    void macAndWindowsHaveTheirOwnPlaces() {
        assertEquals(
                Path.of("/home/ana/Library/Application Support/fourfold/fourfold.db"),
                DataPath.usual("Mac OS X", Map.of("XDG_DATA_HOME", "/data"), HOME));
        assertEquals(
                Path.of("/local/fourfold/fourfold.db"),
                DataPath.usual("Windows 11", Map.of("LOCALAPPDATA", "/local"), HOME));
        assertEquals(
                Path.of("/home/ana/AppData/Local/fourfold/fourfold.db"), DataPath.usual("Windows 11", Map.of(), HOME));
    }

    @Test
    void theVariableNamesAnyOtherFile() {
        assertEquals(
                Path.of("kids.db"),
                DataPath.usual("Linux", Map.of("FOURFOLD_STORE", "kids.db", "XDG_DATA_HOME", "/data"), HOME));
        assertEquals(
                Path.of("/home/ana/.local/share/fourfold/fourfold.db"),
                DataPath.usual("Linux", Map.of("FOURFOLD_STORE", " "), HOME));
    }

    @Test
    void homeIsWhatTheVariableSaysAndElseWhatJavaFound() {
        assertEquals(HOME, DataPath.home("Linux", Map.of("HOME", "/home/ana"), "/root"));
        assertEquals(HOME, DataPath.home("Mac OS X", Map.of(), "/home/ana"));
        assertEquals(HOME, DataPath.home("Linux", Map.of("HOME", "ana"), "/home/ana"));
        assertEquals(HOME, DataPath.home("Windows 11", Map.of("HOME", "/c/other"), "/home/ana"));
    }

    @Test
    void anAccountWithoutAHomeIsToldWhatToDoAndGetsNoFolderNamedByAQuestionMark() {
        Path none = DataPath.home("Linux", Map.of(), "?");
        assertEquals(Path.of(""), none);
        assertEquals(
                "could not use the file name \"fourfold.db\": this account has no home folder; name a file with --store,"
                        + " or set HOME",
                InEnglish.failure(() -> DataPath.usual("Linux", Map.of(), none)));
        assertEquals(
                Path.of("/data/fourfold/fourfold.db"), DataPath.usual("Linux", Map.of("XDG_DATA_HOME", "/data"), none));
    }

    @Test
    void theCacheIsKeptApartFromTheData() {
        assertEquals(Path.of("/home/ana/.cache/fourfold"), DataPath.cache("Linux", Map.of(), HOME));
        assertEquals(Path.of("/c/fourfold"), DataPath.cache("Linux", Map.of("XDG_CACHE_HOME", "/c"), HOME));
        assertEquals(Path.of("/home/ana/Library/Caches/fourfold"), DataPath.cache("Mac OS X", Map.of(), HOME));
        assertEquals(
                Path.of("/local/fourfold/cache"), DataPath.cache("Windows 10", Map.of("LOCALAPPDATA", "/local"), HOME));
    }

    @Test
    void aNameThatTheLanguageSettingCanNotExpressIsToldInOneLine() {
        for (String broken : new String[] {"/home/\uFFFD\uFFFD/x.db", "a\0b"}) {
            String message = InEnglish.failure(() -> DataPath.of(broken));
            assertEquals(1, message.lines().count());
            assertEquals(0, message.indexOf("could not use the file name \""), message);
            assertEquals(-1, message.indexOf(0), "no control character");
        }
    }
}
