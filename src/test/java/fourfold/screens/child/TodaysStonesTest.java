package fourfold.screens.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.insight.LifetimeProgress;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import fourfold.terminal.Picture;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against stairs that grow by more or less than what was done today, and stones that can't be told apart. */
class TodaysStonesTest {
    private static final Instant NOW = Instant.parse("2026-03-02T08:00:00Z");

    private static List<Answer> right(Question question, int times) {
        List<Answer> answers = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            answers.add(new Answer(
                    new Answer.Place(new UUID(1, 1), new UUID(2, 2), i + 1),
                    new Moment(NOW, 0),
                    Purpose.PRACTISE,
                    question,
                    new Answer.Typing(Integer.toString(question.expected()), Answer.Times.NONE, 0),
                    Surface.TERMINAL));
        }
        return answers;
    }

    private static int shown(TodaysStones stones) {
        return Families.all().stream().mapToInt(stones::stones).sum();
    }

    @Test
    void theStairsGrowByExactlyWhatWasDoneTodayTheHardestLast() {
        LifetimeProgress now = new LifetimeProgress();
        right(Question.product(7, 8), 4).forEach(now);
        List<Answer> today = new ArrayList<>(right(Question.product(8, 7), 2));
        today.addAll(right(Question.product(2, 3), 1));
        today.addAll(right(Question.product(1, 9), 1));
        today.forEach(now);
        TodaysStones stones = TodaysStones.between(now.before(today), now).at(NOW);
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
        LifetimeProgress now = new LifetimeProgress();
        List<Answer> today = new ArrayList<>();
        Families.all().forEach(f -> today.addAll(right(Question.product(f.low(), f.high()), 5)));
        today.forEach(now);
        TodaysStones stones = TodaysStones.between(now.before(today), now).at(NOW);
        assertTrue(stones.isMoving());
        assertFalse(stones.at(NOW.plusMillis(1200)).isMoving());
        assertEquals(110, shown(stones.at(NOW.plusMillis(1200))));
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
