// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.TwoStrengthKind;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;

/** Guards against a projection that hangs on chance alone, runs backwards, or guesses from nothing. */
class OutlookTest {
    private static final UUID CHILD = new UUID(3, -1);
    private static final List<Answer> ANSWERS = new ArrayList<>();
    private static final long TODAY = practised();

    /** Fourteen weeks of a child's practice. */
    private static long practised() {
        SchoolYear year = new SchoolYear(new TwoStrengthKind().create(3), new LastingGain(), 3, ANSWERS::add);
        year.run(14);
        return LocalDate.ofInstant(year.now(), ZoneOffset.UTC).toEpochDay() + 1;
    }

    private static YearAhead played(List<Answer> answers, long end, List<Long> earlier, int runs) {
        Map<Long, PracticeDays> days = new HashMap<>(Map.of(TODAY, PracticeDays.aWeek(4)));
        earlier.forEach(day -> days.put(day, PracticeDays.aWeek(4)));
        YearAhead ahead = YearAhead.of(new Basis(CHILD, List.of(), answers, TODAY, end, days, runs));
        while (!ahead.isDone()) {
            ahead = ahead.step();
        }
        return ahead;
    }

    @Test
    void withFewAnswersNothingIsForetold() {
        YearAhead ahead = played(ANSWERS.subList(0, 200), TODAY + 100, List.of(), 2);
        assertTrue(!ahead.isPossible());
        assertEquals(Optional.empty(), ahead.projection());
    }

    /** The same answers, the same day: the same words, whatever was answered since that morning. */
    @Test
    void theLookAheadIsTheSameAllDay() {
        YearAhead morning = played(ANSWERS, TODAY + 200, List.of(), 2);
        List<Answer> more = new ArrayList<>(ANSWERS);
        Answer last = ANSWERS.get(ANSWERS.size() - 1);
        Instant noon = Instant.EPOCH.plus(Duration.ofDays(TODAY)).plus(Duration.ofHours(12));
        more.add(new Answer(
                new Answer.Place(CHILD, new UUID(9, 9), 1),
                new Moment(noon, 0),
                last.purpose(),
                last.prompt(),
                last.typing(),
                last.surface()));
        assertEquals(
                morning.projection(), played(more, TODAY + 200, List.of(), 2).projection());
        assertTrue(morning.projection().isPresent());
    }

    /** A year that ends tomorrow is too short; what would help is then played and not guessed, and nothing does. */
    @Test
    void whatIsOutOfReachIsSaidToBeSo() {
        YearAhead ahead = played(ANSWERS.subList(0, 400), TODAY, List.of(), 1);
        Projection said = ahead.projection().orElseThrow();
        assertTrue(!said.isClosed() && said.early().isEmpty());
        assertEquals(List.of(), ahead.within());
        assertEquals(LocalDate.ofEpochDay(TODAY), said.until());
    }

    @Test
    void anEarlierForecastIsHeldAgainstWhatCame() {
        YearAhead ahead = played(ANSWERS, TODAY, List.of(TODAY - 14), 4);
        EarlierForecast earlier = ahead.earlier().get(0);
        assertEquals(LocalDate.ofEpochDay(TODAY - 14), earlier.made());
        assertTrue(earlier.low() <= earlier.high() && earlier.high() <= 55, earlier.toString());
        Progress now = Progress.of(List.of(), ANSWERS);
        assertEquals(now.families(Mastery.FLUENT), earlier.came());
        // Two weeks of a child who practises on change little: a forecast from another child would be far away.
        assertTrue(Math.abs(earlier.low() - earlier.came()) < 15, earlier.toString());
    }

    @Test
    void nobodyPractisesOnADayOff() {
        PracticeDays off = new PracticeDays(7, Set.of(TODAY, TODAY + 1));
        Progress progress = Progress.of(List.of(), ANSWERS);
        Outlook holidays = new Outlook(progress, TODAY, TODAY + 1, off, Set.copyOf(Families.all()), 1);
        assertEquals(progress.families(Mastery.FLUENT), holidays.toTheEnd(0).fluent());
        assertEquals(0, off.chance(TODAY));
        assertEquals(1, off.chance(TODAY + 2));
    }

    @Test
    void whatOnlyTheTablesLeftOutBringIsLeftOut() {
        assertEquals(
                List.of(Family.of(7, 7), Family.of(7, 9), Family.of(9, 9)),
                new Change.FewerTables(List.of(9, 7)).families());
    }

    /** Against Apache Commons Math 3.6.1, whose R_1 is the same definition. */
    @Test
    void thePercentilesOfTheRunsAreThoseOfALibrary() {
        SplittableRandom random = new SplittableRandom(4);
        for (int runs = 1; runs <= 60; runs++) {
            long[] days = random.longs(runs, 0, 500).sorted().toArray();
            double[] numbers = Arrays.stream(days).asDoubleStream().toArray();
            Percentile library = new Percentile().withEstimationType(EstimationType.R_1);
            for (int share : new int[] {10, 50, 90}) {
                assertEquals(library.evaluate(numbers, share), (double) Outlook.smallest(days, share / 100.0), 0);
            }
        }
    }
}
