// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.screens.DigitReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against a page that is cut off, lost in a corner or unreadable: every page as text, at three sizes and in plain
 * ASCII. {@code -Dpictures=write} writes them anew.
 */
class PicturesTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");

    @TempDir
    private static Path sample;

    private static Instant next = Instant.EPOCH;

    @TempDir
    private Path folder;

    private final StringBuilder pictures = new StringBuilder();

    @BeforeAll
    static void thirtyDrillsLater() {
        next = Sample.fill(sample.resolve("sample.db"));
    }

    @ParameterizedTest
    @CsvSource({"80, 24, true", "60, 20, true", "200, 60, true", "80, 24, false"})
    void everyPageLooksAsItDid(int columns, int rows, boolean unicode) throws IOException {
        Path file = folder.resolve("sample.db");
        Files.copy(sample.resolve("sample.db"), file);
        try (Journey journey = new Journey(file, next, columns, rows, unicode)) {
            take("who practises", journey);
            parentsSide(journey);
            drill(journey);
        }
        String name = columns + "x" + rows + (unicode ? "" : "-ascii") + ".txt";
        if ("write".equals(System.getProperty("pictures"))) {
            Files.createDirectories(FOLDER);
            Files.writeString(FOLDER.resolve(name), pictures);
        }
        assertEquals(Files.readString(FOLDER.resolve(name)), pictures.toString());
        if (!unicode) {
            assertTrue(pictures.chars().allMatch(c -> c < 0x7f), "only ASCII");
        }
    }

    private void parentsSide(Journey journey) {
        take("the stairs", journey.keys("3"));
        take("a family", journey.keys("Enter"));
        take("focus", journey.keys("f"));
        take("undo", journey.keys("u Esc"));
        take("products only", journey.keys("v"));
        take("whole table", journey.keys("v v t"));
        take("all families", journey.keys("t"));
        take("begin again?", journey.keys("t t r"));
        take("letters", journey.keys("n t t l"));
        journey.keys("l t r");
        take("the plan, still working", journey.keys("n t p"));
        take("away from the screen", journey.keys("Esc w"));
        take("more", journey.keys("Esc m"));
        take("pages to print", journey.keys("3"));
        take("a practice page, chosen", journey.keys("1"));
        take("paper, none", journey.keys("Esc Esc 4"));
        take("rates", journey.keys("Esc 5"));
        take("past drills", journey.keys("Esc 6"));
        take("what you did", journey.keys("Esc 7"));
        take("settings", journey.keys("Esc 8"));
        take("order of tables", journey.keys("Up Enter"));
        take("children", journey.keys("Esc Esc 9"));
        take("remove a child?", journey.keys("x"));
        take("a PIN", journey.keys("Esc Esc 0"));
        take("out loud", journey.keys("Esc Down Enter"));
        take("keep in mind", journey.keys("Esc Down Enter"));
        take("for everyone here", journey.keys("Esc Down Down Down Enter"));
        take("the guide", journey.keys("Esc Esc ?"));
        take("the guide, one page on", journey.keys("Right"));
        journey.keys("Esc m");
        journey.keys("Esc Esc");
    }

    private void drill(Journey journey) {
        take("minutes", journey.keys("1"));
        take("a number to copy", journey.keys("Enter"));
        for (int copies = 0; copies < 10 && !isQuestion(journey); copies++) {
            journey.answer();
        }
        assertTrue(isQuestion(journey), journey.picture());
        take("a question", journey);
        take("typing", journey.keys("9"));
        take("a right answer", journey.keys("Backspace").answerAndLook());
        journey.rest(700);
        take("after an error", journey.answer(1));
        take("pause", journey.answer().keys("Esc"));
        take("summary", journey.keys("Esc"));
    }

    private static boolean isQuestion(Journey journey) {
        return DigitReader.read(journey.picture()).orElse("").contains("=");
    }

    private void take(String title, Journey journey) {
        // Where pages go differs from one machine to the next.
        String picture = journey.picture().replaceAll("(?m)^ *Pages go to .*$", "Pages go to the family's folder");
        pictures.append("---- ").append(title).append('\n').append(picture);
    }
}
