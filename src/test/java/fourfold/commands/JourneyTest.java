package fourfold.commands;

import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JourneyTest {
    @Test
    void look(@TempDir Path folder) {
        try (Journey journey =
                new Journey(folder.resolve("a.db"), Instant.parse("2026-03-02T08:00:00Z"), 80, 24, true)) {
            System.out.println(journey.picture());
            journey.keys("Enter").type("Mina").keys("Enter");
            journey.keys("Enter");
            journey.keys("Enter").rest(500);
            for (int i = 0; i < 10; i++) {
                journey.answer();
            }
            System.out.println(journey.picture());
            journey.keys("Enter").rest(100);
            System.out.println(journey.picture());
            for (int i = 0; i < 12; i++) {
                journey.answer();
                System.out.println(journey.picture());
            }
            journey.keys("1 Enter").rest(100);
            System.out.println(journey.picture());
        }
    }
}
