// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Trace;
import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a drill that begins with what is hard, or goes on with it when it should be gentle. */
class ChoiceOfQuestionsTest {
    /** A turn, and how many of the traces met so far were surer at that moment. */
    private record Seen(Turn turn, long surer) {}

    private static Instant day(int day) {
        return AskedAgainTest.START.plus(Duration.ofDays(day)).plus(Duration.ofHours(1));
    }

    private static Progress begun(int day) {
        return AskedAgainTest.practised()
                .progress()
                .beginning(new DrillSession(
                        new UUID(2, 999), AskedAgainTest.CHILD, day(day), 0, Duration.ofMinutes(20), 1));
    }

    /** The first turns of a drill on that day, the ones at these places answered wrongly. */
    private static List<Seen> turns(int day, int count, Set<Integer> wrong) {
        Progress progress = begun(day);
        Instant at = day(day);
        List<Seen> turns = new ArrayList<>();
        while (turns.size() < count) {
            at = at.plusSeconds(6);
            long now = at.toEpochMilli();
            Turn turn = new LastingGain().next(progress, at, 1).orElseThrow();
            double[] all = progress.memory().activations(now);
            double own = all[turn.question().traceIndex()];
            turns.add(new Seen(
                    turn, java.util.Arrays.stream(all).filter(a -> a > own).count()));
            progress = progress.after(
                    AskedAgainTest.answer(turn.question(), turn.purpose(), at, !wrong.contains(turns.size())));
        }
        return turns;
    }

    private static double meanSurer(List<Seen> turns) {
        return turns.stream()
                .filter(t -> t.turn().purpose() == Purpose.PRACTISE)
                .mapToLong(Seen::surer)
                .average()
                .orElseThrow();
    }

    @Test
    void aDrillBeginsWithTheFactThatIsSurestAndOneMoreThatIsSure() {
        Progress progress = begun(9);
        Instant at = day(9).plusSeconds(6);
        double most = Families.traces().stream()
                .filter(t -> progress.level(t.family()).atLeast(Mastery.ACCURATE))
                .mapToDouble(t -> progress.memory().chanceQuick(t.index(), at.toEpochMilli()))
                .max()
                .orElseThrow();
        Trace first =
                new LastingGain().next(progress, at, 1).orElseThrow().question().trace();
        assertEquals(most, progress.memory().chanceQuick(first.index(), at.toEpochMilli()), 0);
        List<Seen> turns = turns(9, 2, Set.of());
        assertTrue(turns.get(1).surer() < 10);
        assertFalse(turns.get(0)
                .turn()
                .question()
                .family()
                .equals(turns.get(1).turn().question().family()));
    }

    /** The last answer was given on day 3; easy is what is surer than three quarters of all. */
    @ParameterizedTest
    @CsvSource({"9, false", "23, false", "24, true", "60, true"})
    void whoComesBackAfterThreeWeeksGetsTheSurestFirst(int day, boolean gentle) {
        double surer = meanSurer(turns(day, 12, Set.of()));
        double met = Families.traces().stream()
                .filter(t -> begun(day).mastery(t).isMet())
                .count();
        assertTrue(gentle ? surer < met / 4 : surer > met / 4, surer + " of " + met);
    }

    /** Below 85 in a hundred after twelve turns or more: five wrong of two dozen are too many, one is not. */
    @Test
    void whenTooMuchGoesWrongEasyFactsComeFirst() {
        double usual = meanSurer(turns(9, 24, Set.of(5)).subList(12, 24));
        double gentle = meanSurer(turns(9, 24, Set.of(3, 5, 7, 9, 11)).subList(12, 24));
        assertTrue(gentle < usual - 10, gentle + " against " + usual);
    }

    @Test
    void onceRightAtTheSecondTryItIsNotAskedAgainAtOnce() {
        List<Seen> turns = turns(9, 40, Set.of(5));
        Trace missed = turns.get(4).turn().question().trace();
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < turns.size(); i++) {
            if (turns.get(i).turn().question().trace().equals(missed)) {
                places.add(i);
            }
        }
        assertTrue(places.size() >= 2, places::toString);
        assertTrue(places.size() == 2 || places.get(2) - places.get(1) > 12, places::toString);
    }
}
