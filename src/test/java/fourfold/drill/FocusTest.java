// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a focus that changes nothing in the next drill, or that never ends. */
class FocusTest {
    private static final Instant START = Instant.parse("2026-03-02T16:00:00Z");
    private static final Player.Child QUICK = (prompt, purpose, position) -> right(prompt, 1000);

    private static final Player.Child SLOW = (prompt, purpose, position) -> right(prompt, 6000);

    private final List<Answer> log = new ArrayList<>();
    private Instant now = START;

    private static Player.Reply right(Prompt prompt, long millis) {
        return new Player.Reply(Integer.toString(prompt.expected()), millis);
    }

    /** Where the child stands by the log so far, under these acts. */
    private Player under(ParentAction... actions) {
        List<ActionRecord> acts = new ArrayList<>();
        for (ParentAction action : actions) {
            acts.add(new ActionRecord(
                    new UUID(9, acts.size()), new UUID(1, 1), START.plusMillis(acts.size()), 0, action));
        }
        Progress.Fold fold = new Progress.Fold(Steering.of(acts));
        log.forEach(fold);
        return new Player(new LastingGain(), fold.progress(), now);
    }

    /** A week of drills without any act: larger products are missed more often and take longer. */
    private void aWeek() {
        SplittableRandom dice = new SplittableRandom(7);
        Player.Child child = (prompt, purpose, position) -> {
            boolean right = !purpose.isFromMemory() || dice.nextInt(200) >= prompt.expected();
            return right
                    ? right(prompt, 900 + 30L * prompt.expected())
                    : new Player.Reply(Integer.toString(prompt.expected() + 1), 2500);
        };
        for (int day = 0; day < 8; day++) {
            log.addAll(under().drill(8, day, child));
            now = now.plus(Duration.ofDays(1));
        }
    }

    private static List<String> asked(List<Answer> drill) {
        return drill.stream().map(a -> a.purpose() + " " + a.prompt()).toList();
    }

    private static long times(List<Answer> drill, Family family) {
        return drill.stream()
                .filter(a -> a.purpose().isFromMemory())
                .flatMap(a -> a.question().stream())
                .filter(q -> q.family().equals(family))
                .count();
    }

    @Test
    void theNextDrillAsksAFamilyInFocusMoreOften() {
        aWeek();
        Progress before = under().progress();
        List<Answer> plain = under().drill(8, 99, QUICK);
        List<Family> shaky = Families.all().stream()
                .filter(f -> before.isMet(f) && !before.level(f).atLeast(Mastery.FLUENT))
                .sorted(Comparator.comparing(f -> times(plain, f)))
                .limit(4)
                .toList();
        assertEquals(4, shaky.size());
        for (Family family : shaky) {
            long focused = times(under(new ParentAction.Focus(family)).drill(8, 99, QUICK), family);
            long without = times(plain, family);
            // Weak facts come back in a drill anyway; in focus they come half as often again, or more.
            assertTrue(
                    2 * focused >= 3 * without && focused > without,
                    family + " " + focused + " times, else " + without);
        }
    }

    @Test
    void aNewFamilyInFocusIsTheNextToBeMet() {
        // Two days of a child who knows little yet; the family is the last in the order that follows no rule.
        for (int day = 0; day < 2; day++) {
            log.addAll(under().drill(8, day, SLOW));
            now = now.plus(Duration.ofDays(1));
        }
        List<Family> order = under().progress().steering().introductionOrder();
        Family family =
                order.stream().filter(f -> !f.contains(1)).reduce((a, b) -> b).orElseThrow();
        assertFalse(under().progress().isMet(family));
        assertEquals(0, times(under().drill(8, 99, SLOW), family));
        assertTrue(times(under(new ParentAction.Focus(family)).drill(8, 99, SLOW), family) > 0);
    }

    @Test
    void aTableOpenedByHandNeedNotWaitUntilWeakFactsAreFirm() {
        // Slow answers leave every fact weak: by itself no new family joins any more.
        for (int day = 0; day < 20; day++) {
            log.addAll(under().drill(8, day, SLOW));
            now = now.plus(Duration.ofDays(1));
        }
        // Now and then one joins all the same, as no child waits for ever; not in every drill.
        for (int day = 20; day < 25 && newIn(under()) > 0; day++) {
            log.addAll(under().drill(8, day, SLOW));
            now = now.plus(Duration.ofDays(1));
        }
        assertEquals(0, newIn(under()));
        assertTrue(newIn(under(new ParentAction.OpenTable(9))) > 0);
    }

    /** How many families are met for the first time in the next drill. */
    private static long newIn(Player player) {
        Progress before = player.progress();
        player.drill(8, 99, SLOW);
        return Families.all().stream()
                .filter(f -> !before.isMet(f) && player.progress().isMet(f))
                .count();
    }

    @Test
    void theFocusEndsByItselfWhenTheFamilyIsFluent() {
        aWeek();
        Family family = Families.all().stream()
                .filter(f -> under().progress().isMet(f)
                        && !under().progress().level(f).atLeast(Mastery.FLUENT))
                .findFirst()
                .orElseThrow();
        ParentAction focus = new ParentAction.Focus(family);
        assertTrue(under(focus).progress().isFocused(family));
        int days = 0;
        for (; under(focus).progress().isFocused(family) && days < 20; days++) {
            List<Answer> drill = under(focus).drill(8, 100 + days, QUICK);
            assertTrue(times(drill, family) > 0, "in focus and not asked on day " + days);
            log.addAll(drill);
            now = now.plus(Duration.ofDays(1));
        }
        assertTrue(days > 0 && days < 20, "days in focus: " + days);
        assertFalse(under(focus).progress().isFocused(family));
        assertEquals(
                asked(under().drill(8, 500, QUICK)),
                asked(under(focus).drill(8, 500, QUICK)),
                "the action still counts");
    }
}
