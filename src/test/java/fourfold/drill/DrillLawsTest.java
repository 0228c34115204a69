// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.log.Answer;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Guards against a drill that echoes, forgets an inverse, or depends on anything but log, time and seed. */
class DrillLawsTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    /** A child who is right with a fixed chance, sometimes says nothing, and takes one to six seconds. */
    private static Player.Child child(double right, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        return (prompt, purpose, position) -> {
            long millis = dice.nextLong(700, 6000);
            double luck = dice.nextDouble();
            if (!purpose.isFromMemory() || luck < right) {
                return new Player.Reply(Integer.toString(prompt.expected()), millis);
            }
            return luck > 0.98
                    ? new Player.Reply("", 0)
                    : new Player.Reply(Integer.toString(prompt.expected() + 1), millis);
        };
    }

    private static Player days(int count, double right, long seed) {
        Player player = new Player(new LastingGain(), Progress.blank(Steering.NONE), START);
        for (int day = 0; day < count; day++) {
            player.drill(8, seed + day, child(right, seed * 31 + day));
            player.rest(Duration.ofDays(day % 4 == 3 ? 4 : 1));
        }
        return player;
    }

    @Property(tries = 10)
    void theSameLogTimeAndSeedGiveTheSameQuestions(@ForAll long seed) {
        assertEquals(days(4, 0.85, seed).log(), days(4, 0.85, seed).log());
    }

    @Property(tries = 10)
    void foldingTheLogGivesWhatTheDrillHadReached(@ForAll long seed) {
        Player player = days(5, 0.8, seed);
        Progress folded = Progress.of(List.of(), player.log());
        for (var trace : fourfold.facts.Families.traces()) {
            assertEquals(
                    player.progress().mastery(trace).level(),
                    folded.mastery(trace).level());
            assertEquals(
                    player.progress().mastery(trace).asked(),
                    folded.mastery(trace).asked());
        }
    }

    @Property(tries = 10)
    void positionsCountUpFromOne(@ForAll long seed) {
        List<Answer> drill = days(1, 0.7, seed).log();
        for (int i = 0; i < drill.size(); i++) {
            assertEquals(i + 1, drill.get(i).position());
        }
    }

    @Property(tries = 10)
    void aDrillEndsSoftlyAfterThePlannedMinutes(
            @ForAll @DoubleRange(min = 0.5, max = 1.0) double right, @ForAll long seed) {
        Player player = days(3, right, seed);
        Instant before = player.now();
        player.drill(5, seed, child(right, seed));
        Duration took = Duration.between(before, player.now());
        assertTrue(took.compareTo(Duration.ofMinutes(5)) >= 0, took.toString());
        assertTrue(took.compareTo(Duration.ofMinutes(7)) <= 0, took.toString());
    }

    @Property(tries = 5)
    void aChildWhoIsMostlyRightMeetsEveryFamilyWithinTheYear(@ForAll long seed) {
        Player player = days(110, 0.97, seed);
        assertFalse(player.progress().nextNew().isPresent(), "families left after 110 drills");
    }
}
