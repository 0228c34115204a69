// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Summary;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.insight.LifetimeProgress;
import fourfold.insight.Timings;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.History;
import fourfold.progress.Progress;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against stairs that grow by more or less than what was done today, and stones that can't be told apart. */
class TodaysStonesTest {
    private static final Instant NOW = Instant.parse("2026-03-02T08:00:00Z");

    /** The stones after these answers; those of day 1 are the newest drill. */
    private static LifetimeProgress after(History history) {
        LifetimeProgress stones = new LifetimeProgress(List.of());
        history.answers().forEach(stones);
        return stones;
    }

    private static TodaysStones today(LifetimeProgress now) {
        return TodaysStones.between(now.before(new UUID(2, 1)), now).at(NOW);
    }

    private static int shown(TodaysStones stones) {
        return Families.all().stream().mapToInt(stones::stones).sum();
    }

    @Test
    void theStairsGrowByExactlyWhatWasDoneTodayTheHardestLast() {
        LifetimeProgress now = after(new History()
                .asked(Family.of(7, 8), "0r 0r 0r 1s")
                .asked(Question.product(2, 3), "1r 1r")
                .asked(Family.of(1, 9), "1v"));
        TodaysStones stones = today(now);
        assertEquals(List.of(Family.of(1, 9), Family.of(2, 3), Family.of(7, 8)), stones.laid());
        assertEquals(1, shown(stones));
        assertEquals(2, shown(stones.at(NOW.plusMillis(200))));
        assertEquals(3, shown(stones.at(NOW.plusMillis(450))));
        TodaysStones all = stones.at(NOW.plusMillis(1200));
        assertEquals(now.laid(), shown(all));
        assertFalse(all.isMoving());
        assertEquals(shown(all), shown(stones.all()), "any key ends it");
    }

    @Test
    void manyStonesTakeNoLonger() {
        History history = new History();
        Families.all().forEach(f -> history.asked(f, "0r 0r 0r 1r 1r"));
        TodaysStones stones = today(after(history));
        assertTrue(stones.isMoving());
        assertFalse(stones.at(NOW.plusMillis(1200)).isMoving());
        assertEquals(165, shown(stones.at(NOW.plusMillis(1200))));
    }

    /** The last day of all: a stone over the highest step, a sentence for it, and where the page to print is. */
    @ParameterizedTest
    @CsvSource({"60, 20, true, ▄▄▄▄", "80, 24, true, ▄▄▄▄", "80, 24, false, ===="})
    void theLastStoneOfAllLaysACapstoneAndNamesThePage(int columns, int rows, boolean unicode, String capstone) {
        History history = new History();
        Families.all().forEach(f -> history.asked(f, "0r 0r 0r 2r 2r 3r " + (f.low() < 10 ? "10r" : "")));
        Summary summary = new Summary(
                Duration.ofMinutes(8),
                new Summary.Answered(20, 20),
                new Summary.Changes(List.of(), List.of(), List.of(), List.of(), Optional.empty()),
                Optional.empty(),
                Summary.Day.GOOD,
                Optional.empty(),
                false);
        assertFalse(told(history, summary, columns, rows, unicode).contains("last stone"));
        history.asked(Family.of(10, 10), "12r");
        String told = told(history, summary, columns, rows, unicode);
        assertTrue(told.contains("I laid the last stone"), told);
        assertTrue(told.contains("Your stairs are done. Ask for your page on paper."), told);
        assertTrue(told.lines().anyMatch(line -> line.strip().equals(capstone)), told);
    }

    private static String told(History history, Summary summary, int columns, int rows, boolean unicode) {
        Picture picture = new Picture(columns, rows, unicode);
        Progress progress = history.progress()
                .beginning(
                        new DrillSession(new UUID(2, 12), new UUID(1, 1), History.at(12), 0, Duration.ofMinutes(8), 1));
        SummaryPicture.without(Words.of(Locale.ENGLISH), new Child(new UUID(1, 1), "Mina", History.START), progress)
                .with(after(history), new Timings())
                .still()
                .draw(picture, summary);
        return picture.toString();
    }

    private static String cell(int stones, Family family, int columns, int rows, boolean unicode) {
        Picture picture = new Picture(columns, rows, unicode);
        new ChildStairs(picture).draw(0, 0, f -> f.equals(family) ? stones : 0);
        return picture.toString();
    }

    /** By shape alone: no two numbers of stones look alike, on a whole row or on half rows, large or small. */
    @ParameterizedTest
    @CsvSource({"60, 20, true", "120, 40, true", "60, 20, false"})
    void eachNumberOfStonesHasAShapeOfItsOwn(int columns, int rows, boolean unicode) {
        for (Family family : List.of(Family.of(1, 1), Family.of(2, 2), Family.of(7, 8), Family.of(10, 10))) {
            List<String> shapes = new ArrayList<>();
            for (int stones = 0; stones <= LifetimeProgress.MOST; stones++) {
                shapes.add(cell(stones, family, columns, rows, unicode));
            }
            assertEquals(shapes.size(), shapes.stream().distinct().count(), family.toString());
        }
    }

    /** Ink in half rows: one stone each is two columns by two half rows where the picture is large, else one by one. */
    @Test
    void aStoneIsASquareOfInk() {
        for (int stones = 1; stones <= LifetimeProgress.MOST; stones++) {
            for (int rows : new int[] {20, 40}) {
                int ink = cell(stones, Family.of(6, 7), rows * 3, rows, true)
                        .chars()
                        .map(c -> c == '█' ? 2 : c == '▀' || c == '▄' ? 1 : 0)
                        .sum();
                assertEquals(stones * (rows == 20 ? 1 : 4), ink);
            }
        }
    }
}
