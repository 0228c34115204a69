// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a day that nobody is told of: on the first page for the parent, in a plain drill for the child. */
class TodayJourneyTest {
    @TempDir
    private Path folder;

    private static void shows(Journey journey, String words) {
        assertTrue(journey.picture().contains(words), () -> "\"" + words + "\" is not shown:\n" + journey.picture());
    }

    @ParameterizedTest
    @CsvSource({"80, 24", "60, 20"})
    void theFirstPageSaysWhatTodayHoldsForTheMarkedChildAndWhatIsDone(int columns, int rows) {
        Path file = folder.resolve("family.db");
        assertEquals(0, CommandRun.of(file, "children", "--add", "Mina").code());
        assertEquals(0, CommandRun.of(file, "children", "--add", "Tom").code());
        assertEquals(
                0,
                CommandRun.of(file, "calendar", "--off", "2026-03-02", "--child", "Tom")
                        .code());
        try (Journey journey = new Journey(file, Instant.parse("2026-03-02T15:00:00Z"), columns, rows, true)) {
            shows(journey, "Mina. Today: a drill. Not done yet.");
            journey.keys("Down");
            shows(journey, "Tom. Today is off.");
            journey.keys("Down");
            assertTrue(!journey.picture().contains("Today"), journey.picture());
        }
        assertEquals(
                0,
                CommandRun.of(file, "away", "2026-03-02", "cards", "--child", "Mina")
                        .code());
        try (Journey journey = new Journey(file, Instant.parse("2026-03-02T15:00:00Z"), columns, rows, true)) {
            shows(journey, "Done: cards.");
        }
    }

    /** Not taken for another child by whoever only presses Enter. */
    @Test
    void theChildWhoCameBackFromADrillIsStillMarked() {
        Path file = folder.resolve("family.db");
        for (String name : new String[] {"Mina", "Tom"}) {
            assertEquals(0, CommandRun.of(file, "children", "--add", name).code());
        }
        try (Journey journey = new Journey(file, Instant.parse("2026-03-02T15:00:00Z"), 80, 24, true)) {
            shows(journey, "Mina. Today");
            journey.keys("2 Enter Esc Esc Esc");
            shows(journey, "Tom. Today");
        }
    }

    @Test
    void aPlainDrillGreetsTheChildWithWhatTodayHolds() {
        Practised.children(folder, "Mina");
        Path file = folder.resolve("family.db");
        PlainChild child = new PlainChild((line, count) -> "q");
        assertEquals(
                "Today: your drill.",
                child.drill(file).out().lines().skip(1).findFirst().orElseThrow());
        assertEquals(0, CommandRun.of(file, "away", "game").code());
        assertEquals(
                "You have done what today holds.",
                new PlainChild((line, count) -> "q")
                        .drill(file)
                        .out()
                        .lines()
                        .skip(1)
                        .findFirst()
                        .orElseThrow());
    }
}
