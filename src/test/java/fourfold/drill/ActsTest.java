// SPDX-License-Identifier: Apache-2.0
package fourfold.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against an act of the parent that the very next drill does not follow. */
class ActsTest {
    private static final Instant START = Instant.parse("2026-03-02T16:00:00Z");
    private static final int MINUTES = 8;

    private final List<Answer> log = new ArrayList<>();
    private Instant now = START;

    /** What was taught is known at the pace of a child who still thinks, what was not is missed. */
    private static Player.Reply taught(fourfold.facts.Prompt prompt, fourfold.log.Purpose purpose) {
        return purpose == fourfold.log.Purpose.PROBE
                ? new Player.Reply(Integer.toString(prompt.expected() + 1), 2500)
                : new Player.Reply(Integer.toString(prompt.expected()), 1800);
    }

    private void days(int count) {
        for (int day = 0; day < count; day++) {
            log.addAll(drill(day));
            now = now.plus(Duration.ofDays(1));
        }
    }

    private List<Answer> drill(long seed, ParentAction... acts) {
        return under(acts).drill(MINUTES, seed, (prompt, purpose, position) -> taught(prompt, purpose));
    }

    /** Where the child stands by the log so far, under these acts, done just now. */
    private Player under(ParentAction... actions) {
        List<ActionRecord> acts = new ArrayList<>();
        for (ParentAction action : actions) {
            acts.add(new ActionRecord(new UUID(9, acts.size()), new UUID(1, 1), now.minusSeconds(60), 0, action));
        }
        Progress.Fold fold = new Progress.Fold(Steering.of(acts));
        log.forEach(fold);
        return new Player(new LastingGain(), fold.progress(), now);
    }

    private static ParentAction[] each(List<Family> families, Function<Family, ParentAction> act) {
        return families.stream().map(act).toArray(ParentAction[]::new);
    }

    private static Set<Family> asked(List<Answer> drill) {
        return drill.stream()
                .flatMap(a -> a.question().stream())
                .map(q -> q.family())
                .collect(Collectors.toSet());
    }

    private static Optional<Duration> untilAsked(List<Answer> drill, Family family) {
        return drill.stream()
                .filter(a -> a.question().filter(q -> q.family().equals(family)).isPresent())
                .findFirst()
                .map(a -> Duration.between(drill.get(0).askedAt(), a.askedAt()));
    }

    private List<Family> met() {
        Progress progress = under().progress();
        return Families.all().stream().filter(progress::isMet).toList();
    }

    /** Each family that was met, once in each place of the order: near ones, far ones, sure ones and weak ones. */
    @ParameterizedTest
    @ValueSource(ints = {4, 12})
    void aFamilyBegunAgainComesInTheFirstHalfOfTheNextDrill(int practised) {
        days(practised);
        for (Family family : met()) {
            List<Answer> next = drill(99, new ParentAction.Reset(family));
            Optional<Duration> wait = untilAsked(next, family);
            assertTrue(wait.isPresent(), family + " is not asked at all");
            assertTrue(wait.get().compareTo(Duration.ofMinutes(MINUTES / 2)) <= 0, family + " after " + wait.get());
        }
    }

    @Test
    void aFamilyBegunAgainComesThoughTheParentWantsNothingNew() {
        days(8);
        Family family = met().get(3);
        List<Answer> next = drill(99, new ParentAction.Choose("new", "0"), new ParentAction.Reset(family));
        assertTrue(asked(next).contains(family));
    }

    @Test
    void aTableBegunAgainIsTakenUpInTheParentsOrder() {
        days(12);
        List<Family> begun =
                Families.inTable(5).stream().filter(met()::contains).toList();
        Player next = under(each(begun, ParentAction.Reset::new));
        List<Answer> drill = next.drill(MINUTES, 99, (prompt, purpose, position) -> taught(prompt, purpose));
        assertTrue(asked(drill).stream().anyMatch(begun::contains), "none of " + begun);
        assertTrue(begun.stream().anyMatch(next.progress()::isMet), "asked, and none was met");
    }

    /** Of a table that the order has not reached, of one that is half met, whatever the child's own limit says. */
    @ParameterizedTest
    @ValueSource(ints = {4, 3, 6, 7, 9})
    void aFocusOnATableBringsTheNextFamilyOfItThatIsNotMet(int table) {
        days(10);
        List<Family> waiting =
                Families.inTable(table).stream().filter(f -> !met().contains(f)).toList();
        assertFalse(waiting.isEmpty());
        Player next = under(each(Families.inTable(table), ParentAction.Focus::new));
        Family first = next.progress().nextNew().orElseThrow();
        assertTrue(waiting.contains(first), first.toString());
        List<Answer> drill = next.drill(MINUTES, 99, (prompt, purpose, position) -> taught(prompt, purpose));
        assertTrue(untilAsked(drill, first).isPresent(), first + " not begun");
        assertTrue(next.progress().isMet(first));
    }

    /** All that was met of the table is weak then and would fill the drill: the new family comes first all the same. */
    @Test
    void aFocusOnATableOfASlowChildBringsANewFamilyOfItToo() {
        Player.Child slow = (prompt, purpose, position) ->
                new Player.Reply(taught(prompt, purpose).digits(), 6000);
        for (int day = 0; day < 25; day++) {
            log.addAll(under().drill(MINUTES, day, slow));
            now = now.plus(Duration.ofDays(1));
        }
        for (int table = 2; table <= 10; table++) {
            List<Family> families = Families.inTable(table);
            Player next = under(each(families, ParentAction.Focus::new));
            if (!met().containsAll(families)) {
                Family first = next.progress().nextNew().orElseThrow();
                next.drill(MINUTES, 99, slow);
                assertTrue(next.progress().isMet(first), "table " + table + ": " + first);
            }
        }
    }

    @Test
    void anOpenedTableBringsItsNextFamily() {
        days(6);
        for (int table = 6; table <= 9; table++) {
            Player next = under(new ParentAction.OpenTable(table));
            Family first = next.progress().nextNew().orElseThrow();
            assertTrue(first.contains(table));
            next.drill(MINUTES, 99, (prompt, purpose, position) -> taught(prompt, purpose));
            assertTrue(next.progress().isMet(first), first.toString());
        }
    }

    @Test
    void whatIsHeldIsNotAskedAndWhatIsReleasedIsAgain() {
        days(6);
        List<Family> held = met().subList(0, 3);
        assertTrue(asked(drill(99, each(held, ParentAction.Hold::new))).stream().noneMatch(held::contains));
        assertTrue(asked(drill(99)).stream().anyMatch(held::contains));
    }

    @Test
    void aDrillWithEverythingOnHoldAsksNothingAndKnowsWhy() {
        days(3);
        Player next = under(each(Families.all(), ParentAction.Hold::new));
        assertTrue(next.progress().isAllSetAside());
        List<Answer> drill = next.drill(MINUTES, 99, (prompt, purpose, position) -> taught(prompt, purpose));
        assertEquals(0, asked(drill).size());
        assertFalse(under(each(met(), ParentAction.Hold::new)).progress().isAllSetAside(), "new ones may come");
        assertFalse(under().progress().isAllSetAside());
        assertEquals(0, next.progress().families(Mastery.LASTING));
    }
}
