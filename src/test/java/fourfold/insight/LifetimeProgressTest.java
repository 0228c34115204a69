// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.progress.History;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against stairs that lose what was reached, or show what was not. */
class LifetimeProgressTest {
    private static final Family SEVEN_EIGHTS = Family.of(7, 8);
    private static final String LASTING = "0r 0r 0r 1r 1r 2r 10r";

    private static LifetimeProgress stones(History history, ActionRecord... actions) {
        LifetimeProgress stones = new LifetimeProgress(List.of(actions));
        history.answers().forEach(stones);
        return stones;
    }

    private static ActionRecord chosen(int number, String limit) {
        return new ActionRecord(
                new UUID(3, number),
                new UUID(1, 1),
                History.START.plusSeconds(number),
                0,
                new ParentAction.Choose("quick", limit));
    }

    /** The levels are those of the parent's page: see the rules in FactMastery. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "                     | 0",
                "0v                   | 1",
                "0r                   | 1",
                "0s 0s 0s 1s          | 2",
                "0r 0r 0r 1r 1r       | 3",
                "0r 0r 0r 1r 1r 2w 3w 4w 5w | 3",
                "0r 0r 0r 1r 1r 2r 10r      | 4",
                "0r 0r 0r 1r 1r 2r 10r 11w 12w 13w 14m | 4",
            })
    void aStoneIsLaidForEachLevelAndStaysWhenTheLevelFalls(String written, int laid) {
        History history = new History().asked(SEVEN_EIGHTS, written == null ? "" : written);
        LifetimeProgress stones = stones(history);
        assertEquals(laid, stones.stones(SEVEN_EIGHTS));
        assertEquals(laid, stones.laid());
        assertEquals(laid > 0 ? 1 : 0, stones.begun());
        assertEquals(laid, stones.highest(SEVEN_EIGHTS).ordinal());
    }

    @Test
    void aFamilyHasTheStonesOfItsWeakestFactAndEachFactItsOwn() {
        Trace product = Trace.product(SEVEN_EIGHTS);
        LifetimeProgress stones = stones(new History().asked(product, LASTING));
        assertEquals(1, stones.stones(SEVEN_EIGHTS));
        assertEquals(Mastery.LASTING, stones.highest(product));
        assertEquals(Mastery.LASTING, stones.highest(SEVEN_EIGHTS, Operation.MULTIPLY));
        assertEquals(Mastery.NEW, stones.highest(SEVEN_EIGHTS, Operation.DIVIDE));
        assertEquals(1, stones.count(Mastery.ACQUIRING));
        assertEquals(54, stones.count(Mastery.NEW));
    }

    @Test
    void whatTheStairsWereBeforeTheNewestDrillIsKnown() {
        LifetimeProgress stones = stones(new History().asked(SEVEN_EIGHTS, "0s 0s 0s 1s"));
        assertEquals(1, stones.before(new UUID(2, 1)).stones(SEVEN_EIGHTS));
        assertEquals(2, stones.stones(SEVEN_EIGHTS));
        assertEquals(2, stones.before(new UUID(2, 7)).stones(SEVEN_EIGHTS), "a drill in which nothing was answered");
        assertEquals(Optional.of(History.FIRST_DAY + 1), stones.lastLaid());
        assertEquals(Optional.empty(), stones(new History()).lastLaid());
    }

    /** A limit of 2 s counts 3 s as slow; it held too late to take a stone away, and taking it back takes none. */
    @Test
    void noSettingTakesAStoneAway() {
        History slow = new History().asked(SEVEN_EIGHTS, "0s 0s 0s 1s 1s");
        History quick = new History().asked(SEVEN_EIGHTS, "0r 0r 0r 1r 1r");
        for (History history : List.of(slow, quick)) {
            int usual = stones(history).stones(SEVEN_EIGHTS);
            assertEquals(usual, stones(history, chosen(1, "2")).stones(SEVEN_EIGHTS));
            int wide = stones(history, chosen(1, "5")).stones(SEVEN_EIGHTS);
            assertTrue(wide >= usual);
            ActionRecord undo = new ActionRecord(
                    new UUID(3, 9), new UUID(1, 1), History.at(5), 0, new ParentAction.Undo(new UUID(3, 1)));
            assertEquals(wide, stones(history, chosen(1, "5"), undo).stones(SEVEN_EIGHTS));
            assertEquals(wide, stones(history, chosen(1, "5"), chosen(2, "2")).stones(SEVEN_EIGHTS));
        }
    }

    @Test
    void theStairsAreWholeWithTheLastStoneAndNotBefore() {
        History history = new History();
        Families.all().stream().filter(f -> !f.equals(SEVEN_EIGHTS)).forEach(f -> history.asked(f, LASTING));
        assertFalse(stones(history.asked(SEVEN_EIGHTS, "0r 0r 0r 1r 1r 2r")).isWhole());
        LifetimeProgress whole = stones(history.asked(SEVEN_EIGHTS, "12r"));
        assertTrue(whole.isWhole());
        assertEquals(Optional.of(History.FIRST_DAY + 12), whole.lastLaid());
    }

    /** Whatever was answered and whatever the parent did, in any order. */
    @Property(tries = 60)
    void stonesNeverFallAndAreNeverBelowTheLevel(@ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int days) {
        SplittableRandom random = new SplittableRandom(seed);
        History history = new History();
        int day = 0;
        for (int i = 0; i < days; i++) {
            day += random.nextInt(3) * random.nextInt(5);
            String one = day + (random.nextInt(5) == 0 ? "w" : random.nextInt(4) == 0 ? "s" : "r");
            history.asked(SEVEN_EIGHTS.traces().get(random.nextInt(3)), one + " " + one);
        }
        List<ActionRecord> actions = new ArrayList<>();
        for (int i = 0; i < random.nextInt(4); i++) {
            ParentAction action = random.nextBoolean()
                    ? new ParentAction.Reset(SEVEN_EIGHTS)
                    : new ParentAction.Choose("quick", List.of("2", "3", "5").get(random.nextInt(3)));
            actions.add(
                    new ActionRecord(new UUID(3, i), new UUID(1, 1), History.at(random.nextInt(day + 1)), 0, action));
        }
        LifetimeProgress stones = new LifetimeProgress(actions);
        Progress progress = Progress.of(actions, List.of());
        int before = 0;
        for (Answer answer : history.answers()) {
            stones.accept(answer);
            progress = progress.after(answer);
            assertTrue(stones.stones(SEVEN_EIGHTS) >= before);
            assertTrue(stones.highest(SEVEN_EIGHTS).atLeast(progress.level(SEVEN_EIGHTS)));
            for (Trace trace : SEVEN_EIGHTS.traces()) {
                assertTrue(stones.highest(trace).atLeast(progress.mastery(trace).level()));
            }
            before = stones.stones(SEVEN_EIGHTS);
        }
    }
}
