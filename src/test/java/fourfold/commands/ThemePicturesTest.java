// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.TextColor;
import fourfold.drill.Phase.Asking;
import fourfold.terminal.Theme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against a page that loses its colours or its letters in one of the themes: each row of signs with a row of letters
 * beneath, one for each pair of colours and style; what they stand for is told at the end. The themes, sizes, languages and
 * alphabets are a chosen table, not every combination. {@code -Dpictures=write} writes them anew.
 */
class ThemePicturesTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");

    @TempDir
    private static Path sample;

    private static Instant next = Instant.EPOCH;

    @TempDir
    private Path folder;

    private final StringBuilder pictures = new StringBuilder();
    private final Map<String, Character> letters = new LinkedHashMap<>();

    @BeforeAll
    static void thirtyDrillsLater() {
        next = Sample.fill(sample.resolve("sample.db"));
    }

    @ParameterizedTest
    @CsvSource({
        "DARK, 80, 24, true, en",
        "DARK, 60, 20, true, es",
        "LIGHT, 80, 24, true, de",
        "LIGHT, 120, 40, true, en",
        "PLAIN, 60, 20, true, de",
        "PLAIN, 80, 24, false, es",
    })
    void everyThemeLooksAsItDid(Theme theme, int columns, int rows, boolean unicode, String language)
            throws IOException {
        Path file = Files.copy(sample.resolve("sample.db"), folder.resolve("sample.db"));
        try (Journey journey = new Journey(file, next, columns, rows, unicode)) {
            journey.speak(language).dress(theme);
            take("the stairs", journey.keys("3"));
            take("a family", journey.keys("Enter"));
            journey.keys("Esc Esc 1 Enter").rest(100);
            for (int i = 0; i < 10 && !isFromMemory(journey); i++) {
                journey.give(0);
            }
            take("typing", journey.keys("9"));
            journey.keys("Backspace").give(1);
            take("after an error", journey);
            journey.give(0);
            take("the end", journey.keys("Esc Esc").rest(1300));
        }
        letters.forEach((look, letter) ->
                pictures.append(letter).append("  ").append(look).append('\n'));
        String name =
                "theme-" + theme.key() + "-" + columns + "x" + rows + (unicode ? "-" : "-ascii-") + language + ".txt";
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(FOLDER.resolve(name), pictures);
        }
        assertEquals(Files.readString(FOLDER.resolve(name)), pictures.toString());
        if (theme == Theme.PLAIN) {
            assertTrue(letters.keySet().stream().allMatch(l -> l.startsWith("DEFAULT on DEFAULT")), letters.toString());
        } else {
            assertTrue(letters.keySet().stream().noneMatch(l -> l.contains("DEFAULT")), letters.toString());
        }
    }

    private static boolean isFromMemory(Journey journey) {
        return journey.drill().orElseThrow().phase() instanceof Asking asking
                && asking.purpose().isFromMemory();
    }

    private void take(String title, Journey journey) {
        pictures.append("---- ").append(title).append('\n');
        int y = 0;
        for (String row : journey.picture().lines().toList()) {
            StringBuilder inks = new StringBuilder();
            for (int x = 0; x < row.length(); x++) {
                inks.append(row.charAt(x) == ' ' ? ' ' : letter(journey.cell(x, y)));
            }
            pictures.append(row).append('\n');
            if (!row.isBlank()) {
                pictures.append(inks).append('\n');
            }
            y++;
        }
    }

    private char letter(TextCharacter cell) {
        String style = cell.getModifiers().stream().map(SGR::name).sorted().collect(Collectors.joining(" "));
        String look =
                (colour(cell.getForegroundColor()) + " on " + colour(cell.getBackgroundColor()) + " " + style).strip();
        return letters.computeIfAbsent(look, l -> (char) ('a' + letters.size()));
    }

    private static String colour(TextColor colour) {
        return colour.toString().replaceAll("[{}]", "");
    }
}
