// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Gain;
import fourfold.drill.Summary;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.History;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against an end that says the wrong thing of a day: the good, the hard, the short and the empty one, and the day of
 * the last stone, as text. {@code -Dpictures=write} writes them anew.
 */
class EndingPicturesTest {
    private static final Path FOLDER = Path.of("src/test/resources/screens");
    private static final Family HARD = Family.of(7, 8);

    private final StringBuilder pictures = new StringBuilder();

    @ParameterizedTest
    @CsvSource({"60, 20, true, en", "80, 24, true, en", "80, 24, false, de", "120, 40, true, es"})
    void everySortOfDayLooksAsItDid(int columns, int rows, boolean unicode, String language) throws IOException {
        Place place = new Place(columns, rows, unicode, Words.of(Locale.forLanguageTag(language)));
        History young = new History().asked(HARD, "0r 0r 0r 1r 1r").asked(Family.of(2, 3), "0r 0r 1r");
        Optional<Gain> fluent = Optional.of(new Gain(Gain.Kind.FLUENT, HARD, 0));
        take("a good day", 1, place, young, ending(Summary.Day.GOOD, 40, 37, fluent));
        take("a hard day", 1, place, young, ending(Summary.Day.HARD, 30, 18, Optional.empty()));
        take("a short day", 1, place, young, ending(Summary.Day.SHORT, 6, 5, Optional.empty()));
        take("a day without a question", 1, place, new History(), ending(Summary.Day.EMPTY, 0, 0, Optional.empty()));
        assertFalse(pictures.substring(pictures.indexOf("a day without")).contains("Well done"));
        History old = new History();
        Families.all().forEach(f -> old.asked(f, "0r 0r 0r 2r 2r 3r " + (f.low() < 10 ? "10r" : "")));
        old.asked(Family.of(10, 10), "12r");
        take("the last stone", 12, place, old, ending(Summary.Day.GOOD, 20, 20, Optional.empty()));
        String name = "endings-" + columns + "x" + rows + (unicode ? "" : "-ascii") + "-" + language + ".txt";
        if ("write".equals(System.getProperty("pictures"))) {
            Files.writeString(FOLDER.resolve(name), pictures);
        }
        assertEquals(Files.readString(FOLDER.resolve(name)), pictures.toString());
        assertTrue(unicode || pictures.chars().allMatch(c -> c < 0x7f), "only ASCII");
    }

    private record Place(int columns, int rows, boolean unicode, Words words) {}

    private static Summary ending(Summary.Day day, int asked, int right, Optional<Gain> gain) {
        List<Family> firmer = gain.map(Gain::family).stream().toList();
        List<Family> again = right < asked ? List.of(Family.of(6, 9)) : List.of();
        return new Summary(
                Duration.ofMinutes(asked / 5),
                new Summary.Answered(asked, right),
                new Summary.Changes(List.of(), firmer, List.of(), again, Optional.empty()),
                gain,
                day,
                Optional.empty(),
                false);
    }

    private void take(String title, int day, Place place, History history, Summary summary) {
        LifetimeProgress stones = new LifetimeProgress(List.of());
        history.answers().forEach(stones);
        Picture picture = new Picture(place.columns, place.rows, place.unicode);
        SummaryPicture.without(
                        place.words,
                        new Child(new UUID(1, 1), "Mina", History.START),
                        history.progress()
                                .beginning(new DrillSession(
                                        new UUID(2, day),
                                        new UUID(1, 1),
                                        History.at(day),
                                        0,
                                        Duration.ofMinutes(8),
                                        1)))
                .with(stones, new Timings())
                .still()
                .draw(picture, summary);
        pictures.append("---- ").append(title).append('\n').append(picture);
    }
}
