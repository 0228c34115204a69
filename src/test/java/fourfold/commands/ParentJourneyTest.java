// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Guards against a parent who needs a manual: with nothing but what the pages say, the shakiest family is found and
 * practised more, that is taken back, and the plan is read.
 */
class ParentJourneyTest {
    private static final Pattern SHAKIEST = Pattern.compile("Shakiest now: (\\d+) × (\\d+)\\.   f practises it more");

    @TempDir
    private Path folder;

    @Test
    void theShakiestFamilyIsFoundPractisedMoreAndTakenBackAndThePlanIsRead() {
        Path file = folder.resolve("sample.db");
        Instant next = Sample.fill(file);
        int before = actions(file).size();
        try (Journey journey = new Journey(file, next, 80, 24, true)) {
            String stairs = journey.keys("3").picture();
            Matcher shakiest = SHAKIEST.matcher(stairs);
            assertTrue(shakiest.find(), stairs);
            String family = shakiest.group(1) + "x" + shakiest.group(2);
            journey.keys("f");
            assertEquals("focus " + family, newest(file));
            shows(journey, "u undo");
            journey.keys("u");
            assertEquals(List.of("focus", "undo"), actions(file).subList(before, before + 2));
            assertFalse(journey.home()
                    .records()
                    .progress(journey.home().children().list().get(0))
                    .steering()
                    .focused()
                    .contains(fourfold.facts.Family.parse(family)));
            shows(journey, "p plan");
            shows(journey.keys("p"), "Working out when all 55 families may be fluent");
            journey.until("All 55 families fluent: perhaps");
            journey.until("An estimate from the answers until this morning");
            assertFalse(journey.picture().contains("orking out"), journey.picture());
            shows(journey.keys("Esc"), "of 55 families fluent");
        }
    }

    private static List<String> actions(Path file) {
        return Rows.column(file, "SELECT kind FROM act ORDER BY nr");
    }

    private static String newest(Path file) {
        return Rows.column(file, "SELECT kind || ' ' || detail FROM act ORDER BY nr DESC LIMIT 1")
                .get(0);
    }

    private static void shows(Journey journey, String words) {
        assertTrue(journey.picture().contains(words), "\"" + words + "\" is not shown:\n" + journey.picture());
    }
}
