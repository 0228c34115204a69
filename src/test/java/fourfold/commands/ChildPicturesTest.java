// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Reason;
import fourfold.log.Purpose;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against a child's page that is cut off, empty or not to be understood: a first day as text, at three sizes, in
 * plain ASCII, in German and in Spanish. {@code -Dpictures=write} writes them anew.
 */
class ChildPicturesTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");

    /** Letters, and of the rest what each of three common fonts for terminals has: lines, whole and half blocks, a few shapes. */
    private static final String SIGNS = "[\\n -~À-ÿ¿¡«»·×÷−–“”„…←↑→↓↔↕│─┌┐└┘┬┴▀▄█▌▐●▪►◄■□▲]";

    @TempDir
    private Path folder;

    private final StringBuilder pictures = new StringBuilder();

    @ParameterizedTest
    @CsvSource({
        "80, 24, true, en",
        "60, 20, true, en",
        "120, 40, true, en",
        "200, 60, true, en",
        "80, 24, false, en",
        "80, 24, true, de",
        "60, 20, true, es",
    })
    void everyPageOfAFirstDayLooksAsItDid(int columns, int rows, boolean unicode, String language) throws IOException {
        Path file = folder.resolve("family.db");
        Instant start = Instant.parse("2026-03-02T16:00:00Z");
        try (Journey journey = new Journey(file, start, columns, rows, unicode)) {
            journey.speak(language);
            journey.keys("Enter");
            take("name", journey.type("Mina"));
            journey.keys("Enter");
            take("minutes", journey.keys("Enter"));
            take("number to copy", journey.keys("9 Enter").rest(100));
            journey.give(0);
            take("a step climbed", journey);
            lesson(journey);
            errors(journey);
            pauses(journey);
            take("summary", journey.keys("Esc Esc"));
        }
        String name = "child-" + columns + "x" + rows + (unicode ? "" : "-ascii")
                + (language.equals("en") ? "" : "-" + language) + ".txt";
        if ("write".equals(System.getProperty("pictures"))) {
            Files.createDirectories(FOLDER);
            Files.writeString(FOLDER.resolve(name), pictures);
        }
        assertEquals(Files.readString(FOLDER.resolve(name)), pictures.toString());
        assertEquals("", pictures.toString().replaceAll(SIGNS, ""), "signs that not every common font has");
        if (!unicode) {
            assertTrue(pictures.chars().allMatch(c -> c < 0x7f), "only ASCII");
        }
    }

    /** The parent's pictures and all others lie in one folder; each is held to its page by a test of its own. */
    @Test
    void noPictureOfAnyPageHasASignThatNotEveryCommonFontHas() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            List<Path> texts = files.filter(f -> f.toString().endsWith(".txt")).toList();
            assertTrue(texts.size() > 20, texts.size() + " files");
            for (Path text : texts) {
                assertEquals("", Files.readString(text).replaceAll(SIGNS, ""), text.toString());
            }
        }
    }

    private void lesson(Journey journey) {
        until(
                journey,
                d -> d.phase() instanceof Phase.Meeting m
                        && !m.family().isSquare()
                        && m.family().low() > 1);
        take("a new family", journey);
        take("a new family, one more", journey.keys("Enter"));
        until(journey, d -> isTaught(d, 0));
        take("covered", journey);
        journey.give(0);
        take("turned around", journey);
        journey.give(0);
        take("undone by division", journey);
    }

    private static boolean isTaught(Drill drill, int tries) {
        return drill.phase() instanceof Asking asking
                && asking.reason() == Reason.COVERED
                && asking.tries() == tries
                && !asking.question().orElseThrow().family().isSquare()
                && asking.question().orElseThrow().family().low() > 1;
    }

    private void errors(Journey journey) {
        for (int i = 0; i < 3; i++) {
            until(journey, ChildPicturesTest::isFromMemory);
            if (i == 0) {
                take("a question", journey);
                take("typing", journey.keys("3"));
                journey.keys("Backspace");
            }
            journey.give(1);
            take("after an error", journey);
            journey.give(0);
        }
        until(journey, ChildPicturesTest::isFromMemory);
        take("asked to be shown", journey.rest(1600).keys("Enter").rest(50));
        journey.give(0);
    }

    private void pauses(Journey journey) {
        until(journey, ChildPicturesTest::isFromMemory);
        take("pause", journey.keys("Esc"));
        journey.keys("Enter").rest(100);
        take("many keys at once", journey.keys("a s d f g h j k l a s d").rest(100));
        journey.rest(1500).keys("Enter").rest(100);
        for (int i = 0; i < 3; i++) {
            until(journey, ChildPicturesTest::isFromMemory);
            journey.rest(300).keys("0 Enter").rest(100);
            journey.give(0);
        }
        until(journey, ChildPicturesTest::isFromMemory);
        take("no hurry", journey);
    }

    private static boolean isFromMemory(Drill drill) {
        return drill.phase() instanceof Asking asking && asking.purpose().isFromMemory();
    }

    private static void until(Journey journey, Predicate<Drill> there) {
        for (int i = 0; i < 200 && !there.test(journey.drill().orElseThrow()); i++) {
            boolean newToIt =
                    journey.drill().orElseThrow().phase() instanceof Asking asking && asking.purpose() == Purpose.PROBE;
            journey.give(newToIt ? 1 : 0);
        }
        assertTrue(there.test(journey.drill().orElseThrow()), journey.picture());
    }

    private void take(String title, Journey journey) {
        pictures.append("---- ").append(title).append('\n').append(journey.picture());
    }
}
