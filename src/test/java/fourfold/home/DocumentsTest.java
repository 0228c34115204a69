// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against pages that nobody finds. The names are those of freedesktop.org's xdg-user-dirs. */
class DocumentsTest {
    @TempDir
    private Path home;

    private Documents documents(String system, Map<String, String> environment) {
        return new Documents(world(system, environment));
    }

    private Environment world(String system, Map<String, String> environment) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        return new Environment(
                new BufferedReader(Reader.nullReader()),
                nowhere,
                nowhere,
                nowhere,
                environment,
                home,
                system,
                true,
                Environment::systemClock);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "-", textBlock = """
            Linux      | -                                          | -          | HOME/Documents
            Linux      | XDG_DOCUMENTS_DIR="$HOME/Dokumente"        | -          | HOME/Dokumente
            Linux      | XDG_DOCUMENTS_DIR="/srv/papers"            | -          | /srv/papers
            Linux      | XDG_DOCUMENTS_DIR="$HOME/"                 | -          | HOME/Documents
            Linux      | # XDG_DOCUMENTS_DIR="$HOME/no"             | -          | HOME/Documents
            Linux      | XDG_DOCUMENTS_DIR="$HOME/Dokumente"        | /srv/mine  | /srv/mine
            Mac OS X   | XDG_DOCUMENTS_DIR="$HOME/Dokumente"        | /srv/mine  | HOME/Documents
            Windows 11 | -                                          | -          | HOME/Documents
            """)
    void pagesGoWhereThePersonsDocumentsAre(String system, String line, String variable, String folder)
            throws IOException {
        if (line != null) {
            Files.createDirectories(home.resolve(".config"));
            Files.writeString(home.resolve(".config/user-dirs.dirs"), "# a comment\n" + line + "\n");
        }
        Map<String, String> environment = variable == null ? Map.of() : Map.of("XDG_DOCUMENTS_DIR", variable);
        Path wanted = Path.of(folder.replace("HOME", home.toString())).resolve("Fourfold");
        assertEquals(wanted, documents(system, environment).folder());
    }

    /** The flag is what a command hands over; the setting is the household's. */
    @Test
    void theBrowserIsLeftAloneByTheFlagAndByTheSettingAndNoPageIsThereTwice() throws Exception {
        Path programs = Files.createDirectories(home.resolve("bin"));
        Path open = Files.writeString(programs.resolve("xdg-open"), "#!/bin/sh\n");
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxr-xr-x"));
        Environment world = world("Linux", Map.of("PATH", programs.toString(), "DISPLAY", ":0"));
        try (Home family = Home.open(world, Optional.of(home.resolve("family.db")), false)) {
            PrintPages pages = family.printPages();
            MadePage first = pages.keep("Ana – Practice", "<p>1</p>", true);
            assertTrue(first.shown());
            assertFalse(pages.keep("Ana – Practice", "<p>1</p>", false).shown(), "the flag");
            family.settings().setShowsPages(false);
            assertFalse(pages.keep("Ana – Practice", "<p>1</p>", true).shown(), "the setting");
            assertEquals(
                    first.file(), pages.keep("Ana – Practice", "<p>1</p>", true).file());
            Path other = pages.keep("Ana – Practice", "<p>2</p>", true).file();
            assertEquals("Ana – Practice (2).html", String.valueOf(other.getFileName()));
            try (Stream<Path> all = Files.list(home.resolve("Documents").resolve("Fourfold"))) {
                assertEquals(2, all.count());
            }
        }
    }

    @Test
    void aPageOfTheDemoIsNotLaidAmongTheFamilysDocuments() throws IOException {
        Environment world = world("Linux", Map.of("PATH", home.toString()));
        MadePage made;
        try (Home demo = Home.open(world, Optional.empty(), true)) {
            made = demo.printPages().keep("Pip – Practice", "<p>1</p>", true);
        }
        assertEquals("<p>1</p>", Files.readString(made.file()), "it stays for the browser");
        try (Stream<Path> all = Files.list(home)) {
            assertEquals(0, all.count());
        }
        Path folder = java.util.Objects.requireNonNull(made.file().getParent());
        assertTrue(folder.toString().matches(".*fourfold-demo[0-9]+-pages"), folder.toString());
        Files.delete(made.file());
        Files.delete(folder);
    }

    @Test
    void aPageIsShownWhereThereIsADesktopAndAProgramForIt() throws Exception {
        Path programs = Files.createDirectories(home.resolve("bin"));
        Path open = programs.resolve("xdg-open");
        Path seen = home.resolve("seen");
        Files.writeString(
                open,
                "#!/bin/sh\nprintf '%s' \"$1\" > '" + home.resolve("part") + "'; mv '" + home.resolve("part") + "' '"
                        + seen + "'\n");
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxr-xr-x"));
        Path page = home.resolve("A page – 1.html");
        Map<String, String> desktop = new HashMap<>(Map.of("PATH", programs.toString(), "DISPLAY", ":0"));
        assertTrue(documents("Linux", desktop).show(page));
        for (long end = System.nanoTime() + 10_000_000_000L; !Files.exists(seen) && System.nanoTime() < end; ) {
            Thread.onSpinWait();
        }
        assertEquals(page.toString(), Files.readString(seen));
        assertFalse(documents("Linux", Map.of("PATH", programs.toString())).show(page), "no desktop");
        assertFalse(
                documents("Linux", Map.of("PATH", home.toString(), "DISPLAY", ":0"))
                        .show(page),
                "no program");
    }
}
