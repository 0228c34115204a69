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
            System.out.println(journey.picture());
            journey.keys("Enter");
            System.out.println(journey.picture());
            journey.keys("Enter").rest(500);
            System.out.println(journey.picture());
            for (int i = 0; i < 10; i++) {
                String n = journey.picture()
                        .lines()
                        .filter(l -> l.matches("\\s*\\d+\\s*"))
                        .findFirst()
                        .orElse("")
                        .strip();
                journey.keys(String.join(" ", n.split("")) + " Enter").rest(700);
            }
            System.out.println(journey.picture());
            journey.keys("Enter").rest(100);
            System.out.println(journey.picture());
            journey.keys("2 Enter").rest(1000);
            System.out.println(journey.picture());
            journey.keys("Esc").rest(100);
            System.out.println(journey.picture());
            journey.keys("Esc").rest(100);
            System.out.println(journey.picture());
            journey.keys("Enter Down Down Enter").rest(100);
            System.out.println(journey.picture());
            journey.keys("Enter").rest(100);
            System.out.println(journey.picture());
        }
    }
}
