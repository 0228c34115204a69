// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against a first evening that is spent in menus. */
class FirstRunTest {
    @TempDir
    private Path folder;

    @Test
    void theFirstDrillIsTwoKeysAfterTheNameAndTheParentIsToldOnceWhereTheirPagesAre() throws Exception {
        String toTheParent = "your pages are behind \"For parents\"";
        Instant later = Instant.parse("2026-03-03T16:00:00Z");
        try (Journey journey =
                new Journey(folder.resolve("family.db"), Instant.parse("2026-03-02T16:00:00Z"), 80, 24, true)) {
            journey.keys("Enter");
            assertTrue(journey.picture().contains("first name, or a nickname?"), journey.picture());
            journey.type("Mina").keys("Enter");
            assertTrue(journey.drill().isEmpty());
            journey.keys("Enter");
            assertTrue(journey.picture().contains(toTheParent), journey.picture());
            journey.keys("Enter");
            assertTrue(journey.drill().isPresent(), journey.picture());
            journey.answer();
        }
        try (Journey journey = new Journey(folder.resolve("family.db"), later, 80, 24, true)) {
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Hello Mina"), journey.picture());
            assertFalse(journey.picture().contains(toTheParent), journey.picture());
        }
        CommandRun.of(folder.resolve("family.db"), "children", "--add", "Ivo");
        try (Journey journey = new Journey(folder.resolve("family.db"), later, 80, 24, true)) {
            journey.keys("Enter");
            assertTrue(journey.picture().contains("Hello Ivo"), journey.picture());
            assertFalse(journey.picture().contains(toTheParent), journey.picture());
        }
    }

    @Test
    void theParentOfTwoIsToldOnceTooWhoeverPractisesFirst() {
        CommandRun.of(folder.resolve("family.db"), "children", "--add", "Mina");
        CommandRun.of(folder.resolve("family.db"), "children", "--add", "Ivo");
        for (boolean first : new boolean[] {true, false}) {
            Instant start = Instant.parse(first ? "2026-03-02T16:00:00Z" : "2026-03-03T16:00:00Z");
            try (Journey journey = new Journey(folder.resolve("family.db"), start, 80, 24, true)) {
                journey.keys(first ? "Down Enter" : "Enter");
                assertTrue(journey.picture().contains(first ? "Hello Ivo" : "Hello Mina"), journey.picture());
                assertEquals(first, journey.picture().contains("For the grown-up:"), journey.picture());
                journey.keys("Enter").answer();
            }
        }
    }

    @Test
    void whereTheTerminalCanNotDrawTheNameIsAskedInPlainLines() {
        CommandRun run = CommandRun.dumb(folder.resolve("family.db"), "Mina\nq\n");
        assertEquals(0, run.code(), run.err());
        List<String> lines = run.out().lines().toList();
        assertEquals("What is the child's first name, or a nickname?", lines.get(0));
        assertTrue(lines.get(1).startsWith("Hello Mina."), run.out());
        CommandRun.of(folder.resolve("family.db"), "children", "--add", "Ivo");
        CommandRun second = CommandRun.dumb(folder.resolve("family.db"), "7\nIvo\nq\n");
        assertTrue(second.out().contains("1 Mina") && second.out().contains("2 Ivo"), second.out());
        assertTrue(second.out().contains("Hello Ivo."), second.out());
        assertFalse(second.out().contains("Hello Mina."), second.out());
    }
}
