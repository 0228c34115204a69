// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Drill;
import fourfold.drill.Phase.Asking;
import fourfold.facts.Families;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against parts that work alone and not together: a family's first day, by keys, with the rows read back. */
class JourneyTest {
    private static final String ACTIONS = "SELECT kind || ' ' || detail FROM act ORDER BY nr";

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("family.db");
    }

    @ParameterizedTest
    @CsvSource({"80,24,true", "60,20,false"})
    void aFirstDay(int columns, int rows, boolean unicode) {
        try (Journey journey = new Journey(file(), Instant.parse("2026-03-02T16:00:00Z"), columns, rows, unicode)) {
            shows(journey, "Who will practise?");
            journey.keys("Enter").type("Mina").keys("Enter");
            shows(journey, "Who wants to practise?");
            journey.keys("Enter");
            shows(journey, "Hello Mina.");
            journey.keys("5 Enter").rest(100);
            practise(journey);
            shows(journey, "Everything is kept.");
            DrillRows.checkPurposes(file());
            DrillRows.checkInverses(file());
            DrillRows.checkTimes(file());
            List<List<String>> drill = Rows.of(file(), "SELECT started_at, zone_offset_min, planned_s FROM drill");
            assertEquals(
                    List.of(List.of("60", "300")),
                    drill.stream().map(d -> d.subList(1, 3)).toList());
            assertEquals(
                    List.of("Mina|terminal"),
                    Rows.column(file(), "SELECT DISTINCT nickname || '|' || surface FROM answer_log"));
            assertTrue(
                    Rows.column(file(), "SELECT local_time FROM answer_log WHERE position = 1")
                            .get(0)
                            .startsWith("2026-03-02 17:00:"),
                    "local time is an hour ahead of UTC");
            journey.rest(1500).keys("Enter");
            shows(journey, "Who wants to practise?");
            parent(journey);
            journey.keys("Esc");
            assertFalse(journey.isGoing());
        }
        try (Journey again = new Journey(file(), Instant.parse("2026-03-03T16:00:00Z"), columns, rows, unicode)) {
            shows(again, "Mina");
            again.keys("3");
            shows(again, "of 55 families fluent");
        }
    }

    /** Everything right but for one answer, and one question that is not answered. */
    private static void practise(Journey journey) {
        int fromMemory = 0;
        for (int i = 0; i < 500 && !journey.drill().orElseThrow().isFinished(); i++) {
            boolean memory = journey.drill().orElseThrow().phase() instanceof Asking asking
                    && asking.purpose().isFromMemory();
            fromMemory += memory ? 1 : 0;
            if (memory && fromMemory == 5) {
                journey.answer(1);
            } else if (memory && fromMemory == 9) {
                journey.rest(1600).keys("Enter").rest(50);
            } else {
                journey.answer();
            }
        }
    }

    private void parent(Journey journey) {
        String answers = Rows.column(file(), "SELECT COUNT(*) FROM answer").get(0);
        journey.keys("3");
        shows(journey, "of 55 families fluent");
        journey.keys("f");
        String focused = Rows.column(file(), ACTIONS).get(0);
        assertTrue(focused.matches("focus \\d+x\\d+"), focused);
        shows(journey, "*");
        journey.keys("u");
        assertEquals(List.of("focus", "undo"), Rows.column(file(), "SELECT kind FROM act ORDER BY nr"));
        assertEquals(
                Rows.column(file(), "SELECT id FROM act WHERE kind = 'focus'"),
                Rows.column(file(), "SELECT detail FROM act WHERE kind = 'undo'"));
        String[] factors = focused.substring("focus ".length()).split("x");
        journey.keys("Enter");
        shows(journey, "Mina");
        shows(journey, Integer.parseInt(factors[0]) * Integer.parseInt(factors[1]) + " ");
        journey.keys("h r y");
        assertEquals(
                List.of("focus", "undo", "hold", "reset"), Rows.column(file(), "SELECT kind FROM act ORDER BY nr"));
        journey.keys("Esc t h");
        assertEquals(14, Rows.column(file(), ACTIONS).size());
        journey.keys("u");
        assertEquals(24, Rows.column(file(), ACTIONS).size());
        journey.keys("m 6");
        List<List<String>> counts = Rows.of(
                file(),
                "SELECT SUM(outcome = 'right'), COUNT(*) FROM answer_log"
                        + " WHERE purpose IN ('practise', 'again', 'probe')");
        shows(journey, counts.get(0).get(0) + " of " + counts.get(0).get(1));
        shows(journey, "2 Mar 2026");
        journey.keys("Esc Esc Esc");
        assertEquals(List.of(answers), Rows.column(file(), "SELECT COUNT(*) FROM answer"));
    }

    @Test
    void theSecondDrillKnowsTheFirst() {
        try (Journey journey = new Journey(file(), Instant.parse("2026-03-02T16:00:00Z"), 80, 24, true)) {
            journey.keys("Enter").type("Mina").keys("Enter Enter 5 Enter").rest(100);
            practise(journey);
            int met = (int) met(journey.drill().orElseThrow());
            journey.rest(1500).keys("Enter Enter 5 Enter").rest(100);
            assertEquals(met, met(journey.drill().orElseThrow()));
            for (int i = 0; i < 7; i++) {
                journey.answer();
            }
            // Hands are known by now: on most days nothing is copied.
            assertEquals(
                    List.of("10", "0"),
                    Rows.column(
                            file(),
                            "SELECT SUM(a.purpose = 0) FROM answer a JOIN drill d ON d.nr = a.drill_nr"
                                    + " GROUP BY d.nr ORDER BY d.started_at"));
        }
    }

    private static long met(Drill drill) {
        return Families.all().stream().filter(drill.progress()::isMet).count();
    }

    private static void shows(Journey journey, String words) {
        assertTrue(journey.picture().contains(words), "\"" + words + "\" is not shown:\n" + journey.picture());
    }
}
