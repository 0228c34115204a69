// SPDX-License-Identifier: Apache-2.0
package fourfold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Guards against papers that no longer tell what the program does. */
class DocumentationTest {
    private static String read(String file) throws IOException {
        return Files.readString(Path.of(file));
    }

    @Test
    void readmeShowsPicturesThatTheProgramReallyDraws() throws IOException {
        List<String> drawn = read("src/test/resources/screens/80x24.txt")
                .lines()
                .map(String::strip)
                .toList();
        List<String> shown = blocks(read("README.md"), "text");
        assertEquals(2, shown.size());
        for (String picture : shown) {
            for (String line : picture.lines().map(String::strip).toList()) {
                assertTrue(drawn.contains(line), "not drawn by the program: " + line);
            }
        }
    }

    @Test
    void readmeOpensWithOneParagraphThatStatesTheJob() throws IOException {
        List<String> lines = read("README.md").lines().toList();
        assertEquals("# Fourfold", lines.get(0));
        assertTrue(lines.get(2).contains("multiplication and division fact"), lines.get(2));
        assertTrue(lines.get(3).isEmpty());
    }

    @Test
    void readmeStatesBothCommands() throws IOException {
        List<String> commands = blocks(read("README.md"), "sh");
        assertEquals(List.of("mvn -q -DskipTests package && java \"@target/fourfold.start\"", "mvn verify"), commands);
        assertTrue(read(".ci/run").contains("mvn verify"));
    }

    @Test
    void readmeBeginsForAParentWhoGetsItStartsItAndBeginsADrillBeforeAnythingForDevelopers() throws IOException {
        String readme = read("README.md");
        int get = readme.indexOf("\n## Get it and start it\n");
        int first = readme.indexOf("\n## The first five minutes\n");
        int developers = readme.indexOf("\n## For developers\n");
        assertTrue(0 < get && get < first && first < developers);
        assertFalse(readme.substring(0, developers).contains("mvn "));
        assertTrue(readme.substring(get, first).contains("neither system was at hand to try them on"));
    }

    @Test
    void eachSourceBeginsWithItsLicence() throws IOException {
        assertTrue(read("LICENSE").contains("Apache License"));
        List<Path> without = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                if (!Files.readString(file).startsWith("// SPDX-License-Identifier: Apache-2.0\n")) {
                    without.add(file);
                }
            }
        }
        assertEquals(List.of(), without);
    }

    @Test
    void everyCommandStandsInReadme() throws IOException {
        String papers = read("README.md");
        int commands = 0;
        try (Stream<Path> files = Files.list(Path.of("src/main/java/fourfold/commands"))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith("Command.java")).toList()) {
                String source = Files.readString(file);
                Matcher name = Pattern.compile("name = \"([a-z-]+)\"").matcher(source);
                assertTrue(name.find(), file.toString());
                commands++;
                boolean told = Pattern.compile("`[^`]*\\b" + name.group(1) + "\\b[^`]*`")
                        .matcher(papers)
                        .find();
                assertTrue(told || source.contains("hidden = true"), "README does not tell of " + name.group(1));
            }
        }
        assertTrue(commands > 8);
    }

    /** Rooms within rooms as well; {@link ArchitectureTest} holds the arrows. */
    @Test
    void theMapNamesEveryRoomAndNoOther() throws IOException {
        Path main = Path.of("src/main/java/fourfold");
        TreeSet<String> rooms = new TreeSet<>();
        try (Stream<Path> folders = Files.walk(main)) {
            for (Path folder : folders.filter(Files::isDirectory).toList()) {
                rooms.add(main.relativize(folder)
                        .toString()
                        .replace(folder.getFileSystem().getSeparator(), "."));
            }
        }
        rooms.remove("");
        TreeSet<String> mapped = new TreeSet<>();
        Matcher row =
                Pattern.compile("(?m)^\\| `([a-z.]+)` \\| [^|]+ \\| [^|]+ \\|$").matcher(read("DEVELOPERS.md"));
        while (row.find()) {
            assertTrue(mapped.add(row.group(1)), row.group(1) + " is on the map twice");
        }
        assertEquals(rooms, mapped);
    }

    /** A tour that leads to a class that is no longer there leads nowhere. */
    @Test
    void everyClassThatATourNamesIsThere() throws IOException {
        Path main = Path.of("src/main/java");
        int named = 0;
        try (Stream<Path> files = Files.walk(main)) {
            for (Path file : files.filter(f -> f.endsWith("package-info.java")).toList()) {
                Matcher link = Pattern.compile("\\{@link\\s+(fourfold[\\w.]*)").matcher(Files.readString(file));
                while (link.find()) {
                    named++;
                    Path target = main.resolve(link.group(1).replace('.', '/') + ".java");
                    assertTrue(Files.exists(target), file + " leads to " + link.group(1));
                }
            }
        }
        assertTrue(named >= 40, named + " classes named");
    }

    @Test
    void everyLibraryIsNamedWithItsReason() throws IOException {
        String papers = read("DEVELOPERS.md")
                .toLowerCase(java.util.Locale.ROOT)
                .replace(" ", "")
                .replace("-", "");
        Matcher artifact = Pattern.compile(
                        "<dependency>\\s*<groupId>[^<]+</groupId>\\s*<artifactId>([^<]+)</artifactId>\\s*<version>")
                .matcher(read("pom.xml"));
        int found = 0;
        while (artifact.find()) {
            found++;
            String name = artifact.group(1)
                    .replace("-", "")
                    .replace("junitjupiter", "junit")
                    .replace("math3", "math");
            assertTrue(papers.contains(name), "DEVELOPERS.md does not name " + artifact.group(1));
        }
        assertTrue(found > 10);
    }

    @Test
    void thePapersHoldNoPlaceForSomethingToComeLater() throws IOException {
        for (String file : List.of("README.md", "DEVELOPERS.md")) {
            assertFalse(
                    Pattern.compile("TODO|FIXME|@[A-Z]+@").matcher(read(file)).find(), file);
        }
    }

    private static List<String> blocks(String text, String language) {
        List<String> blocks = new ArrayList<>();
        Matcher block = Pattern.compile("(?s)```" + language + "\\n(.*?)\\n```").matcher(text);
        while (block.find()) {
            blocks.add(block.group(1));
        }
        return blocks;
    }
}
