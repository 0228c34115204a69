// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Guards against an answer that an earlier program counted, before it was killed, and that this one loses. The files in
 * {@code earlier/killed} are all that the program of 27 November 2026 left in its folder, and {@code shown.csv} says what
 * its screen had shown as counted. They are never changed:
 *
 * <ul>
 *   <li>ended: closed as usual; an empty journal stayed;
 *   <li>slip: killed while another program held the file; one answer stands only on the slip;
 *   <li>slips: the same with two children in two windows;
 *   <li>slip-and-journal: killed in the middle of a write of the file; an answer stands on the slip, and the journal says
 *       how to undo the write;
 *   <li>journal: the same in a plain drill;
 *   <li>import: killed in the middle of an import, which has to be undone; there is no slip.
 * </ul>
 */
class KilledEarlierFilesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"ended", "slip", "slips", "slip-and-journal", "journal", "import"})
    void everyAnswerShownAsCountedIsFoundOnceByEveryWay(String name) throws IOException {
        unpack(name, LeftBehind.emptyFolder(folder.resolve("family")));
        LeftBehind left = LeftBehind.of(folder.resolve("family/family.db"), folder.resolve("ways"));
        List<String> missing = new ArrayList<>();
        List<String> tooMuch = new ArrayList<>();
        for (Way way : Way.values()) {
            List<String> found = new ArrayList<>(found(way, left));
            shown(name, "counted").stream().filter(s -> !found.remove(s)).forEach(s -> missing.add(way + " " + s));
            found.removeAll(shown(name, "on its way"));
            found.forEach(s -> tooMuch.add(way + " " + s));
        }
        assertEquals(List.of(), missing);
        assertEquals(List.of(), tooMuch);
    }

    /** Each answer's place in its drill, what was asked and what was typed; the screen does not tell a drill's name. */
    private static List<String> found(Way way, LeftBehind left) {
        Path copy = left.copy(way.name());
        Path scratch = left.scratch(way.name());
        if (way == Way.VERIFY) {
            tellsWhatAStartWillTakeIn(copy);
            Way.START.found(copy, scratch);
        }
        return way.found(copy, scratch).stream()
                .map(line -> line.substring(line.indexOf(' ') + 1))
                .toList();
    }

    /** To verify a file changes nothing, so a half write or a slip can only be told of. */
    private static void tellsWhatAStartWillTakeIn(Path file) {
        Path folder = file.resolveSibling("");
        boolean cutShort = isFilled(file.resolveSibling("family.db-journal"));
        CommandRun run = CommandRun.of(file, "verify");
        assertEquals(cutShort ? 1 : 0, run.code());
        assertEquals(cutShort, run.out().contains("a write was cut short; the next start completes it"), run.out());
        assertFalse(run.out().contains("fourfold restore") || run.out().contains("fourfold salvage"), run.out());
        String[] names = Objects.requireNonNull(folder.toFile().list());
        boolean slips = Stream.of(names).anyMatch(name -> name.contains("-slip-"));
        assertEquals(slips, run.out().contains("together are whole. The next start takes "), run.out());
        assertEquals(!slips && !cutShort, run.out().contains("whole by itself"), run.out());
        assertEquals(cutShort, isFilled(file.resolveSibling("family.db-journal")));
    }

    private static boolean isFilled(Path journal) {
        return journal.toFile().length() > 0;
    }

    private static List<String> shown(String name, String how) throws IOException {
        try (Reader csv = new InputStreamReader(kept("shown.csv"), StandardCharsets.UTF_8);
                Stream<CSVRecord> rows = CSVFormat.RFC4180.builder().setHeader().get().parse(csv).stream()) {
            return rows.filter(r -> r.get("file").equals(name) && r.get("shown").equals(how))
                    .map(r -> r.get("position") + ": " + r.get("asked") + " -> " + r.get("typed"))
                    .toList();
        }
    }

    private static void unpack(String name, Path folder) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(kept(name + ".zip"))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                Files.copy(zip, folder.resolve(entry.getName()));
            }
        }
    }

    private static InputStream kept(String name) {
        return Objects.requireNonNull(
                KilledEarlierFilesTest.class.getResourceAsStream("/fourfold/store/earlier/killed/" + name), name);
    }
}
