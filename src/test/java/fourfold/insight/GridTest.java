// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.ParentAction;
import fourfold.progress.History;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against a grid that says of a family what its answers do not say. */
class GridTest {
    private static final Family SIX_SEVENS = Family.of(6, 7);
    private static final String ACCURATE = "0s 0s 0s 1s";
    private static final String FLUENT = "0r 0r 0r 1r 1r";

    private static Grid.Cell cell(History history, int day, ParentAction... actions) {
        return grid(history, day, actions).cell(SIX_SEVENS);
    }

    private static Grid grid(History history, int day, ParentAction... actions) {
        return Grid.of(history.progress(actions), History.at(day));
    }

    private static History all(String written) {
        return new History().asked(SIX_SEVENS, written);
    }

    /** The grid stays open while the parent begins a family again and takes that back: the arrows are the child's own. */
    @Test
    void whatTheParentBeginsAgainOrTakesBackIsNoChangeByTheChild() {
        ActionRecord reset =
                new ActionRecord(new UUID(3, 9), new UUID(1, 1), History.at(2), 0, new ParentAction.Reset(SIX_SEVENS));
        Progress fluent = all(FLUENT).progress();
        Progress begun = Progress.of(List.of(reset), all(FLUENT).answers());
        assertEquals(Mastery.NEW, begun.level(SIX_SEVENS), "the reset is after the answers");
        Grid after = Grid.of(begun, History.at(3));
        assertEquals(0, after.weaker(fluent));
        assertEquals(0, after.change(SIX_SEVENS, fluent));
        assertEquals(0, Grid.of(fluent, History.at(3)).firmer(begun), "taken back");
        assertEquals(1, Grid.of(fluent, History.at(3)).firmer(new History().progress()), "by the child");
    }

    @Test
    void thereIsOneCellForEachFamilyInTheOrderOfTheStairsAndAllAreNewAtFirst() {
        Grid grid = grid(new History(), 0);
        assertEquals(
                Families.all(), grid.cells().stream().map(Grid.Cell::family).toList());
        assertEquals(55, grid.count(Mastery.NEW));
        assertEquals(Optional.empty(), grid.shakiest());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0v             |                |                | ACQUIRING | ACQUIRING | NEW",
                "0r 0r 0r 1r 1r | 0r 0r 0r 1r 1r | 0s 0s 0s 1s    | ACCURATE  | FLUENT    | ACCURATE",
                "0r 0r 0r 1r 1r | 0s 0s 0s 1s    | 0r 0r 0r 1r 1r | ACCURATE  | FLUENT    | ACCURATE",
                "0s 0s 0s 1s    | 0r 0r 0r 1r 1r | 0r 0r 0r 1r 1r | ACCURATE  | ACCURATE  | FLUENT",
                "0r 0r 0r 1r 1r | 0r 0r 0r 1r 1r | 0r 0r 0r 1r 1r | FLUENT    | FLUENT    | FLUENT",
                "0w             | 0r 0r 0r 1r 1r | 0r 0r 0r 1r 1r | ACQUIRING | ACQUIRING | FLUENT"
            })
    void aFamilyIsAsFarAsItsWeakestFactAndItsDivisionsAsFarAsTheWeakerOne(
            String product, String bySix, String bySeven, Mastery level, Mastery products, Mastery quotients) {
        History history = new History()
                .asked(Trace.product(SIX_SEVENS), Optional.ofNullable(product).orElse(""))
                .asked(Trace.quotient(SIX_SEVENS, 6), Optional.ofNullable(bySix).orElse(""))
                .asked(
                        Trace.quotient(SIX_SEVENS, 7),
                        Optional.ofNullable(bySeven).orElse(""));
        Grid.Cell cell = cell(history, 1);
        assertEquals(level, cell.level());
        assertEquals(products, cell.products());
        assertEquals(quotients, cell.quotients());
        assertEquals(1, grid(history, 1).count(level));
        assertEquals(54, grid(history, 1).count(Mastery.NEW));
        assertEquals(level.atLeast(Mastery.FLUENT) ? 1 : 0, grid(history, 1).fluent());
    }

    @Test
    void rightAndAskedAreTheSumsOverTheFamilyAndAnswersInViewAreNone() {
        History history = new History()
                .asked(Trace.product(SIX_SEVENS), "0v 0r 0w 0s")
                .asked(Trace.quotient(SIX_SEVENS, 6), "0v 0m 0r")
                .asked(Trace.quotient(SIX_SEVENS, 7), "0w")
                .asked(Family.of(7, 7), "0r");
        Grid.Cell cell = cell(history, 0);
        assertEquals(3, cell.right());
        assertEquals(6, cell.asked());
    }

    @Test
    void focusAndHoldAreThoseOfTheParentAndAFocusEndsWithFluency() {
        ParentAction focus = new ParentAction.Focus(SIX_SEVENS);
        assertTrue(cell(all(ACCURATE), 1, focus).focused());
        assertFalse(cell(all(FLUENT), 1, focus).focused());
        assertFalse(cell(all(ACCURATE), 1, focus).held());
        assertTrue(cell(all(ACCURATE), 1, new ParentAction.Hold(SIX_SEVENS)).held());
        assertFalse(grid(all(ACCURATE), 1, new ParentAction.Hold(SIX_SEVENS))
                .cell(Family.of(6, 6))
                .held());
    }

    /** After two days that began right the gap is two days; after three it is four. */
    @ParameterizedTest
    @CsvSource({
        "0s 0s 0s 1s, 0s 0s 0s 1s, 2, false",
        "0s 0s 0s 1s, 0s 0s 0s 1s, 3, true",
        "0r 0r 0r 1r 1r, 0r 0r 0r 1r 2r, 3, true",
        "0r 0r 0r 1r 2r, 0r 0r 0r 1r 2r, 5, false",
        "0r 0r 0r 1r 2r, 0r 0r 0r 1r 2r, 6, true",
        // Not there yet, so it can't fade.
        "0w 0w 1w, 0w 0w 1w, 5, false",
        "0r 0r 0r 1r 1r, 0w 0w 1w, 5, false"
    })
    void whatWasAccurateFadesFromTheDayOnWhichOneOfItsFactsIsDue(
            String product, String divisions, int day, boolean fading) {
        History history = new History()
                .asked(Trace.product(SIX_SEVENS), product)
                .asked(Trace.quotient(SIX_SEVENS, 6), divisions)
                .asked(Trace.quotient(SIX_SEVENS, 7), divisions);
        assertEquals(fading, cell(history, day).fading());
    }

    /** Twelve families, each trace asked on a few of twenty days. */
    private static History random(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        History history = new History();
        for (int i = 0; i < 12; i++) {
            String kinds = random.nextBoolean() ? "rrrrrrrw" : "rrssswm";
            for (Trace trace : Families.at(random.nextInt(Families.COUNT)).traces()) {
                StringBuilder written = new StringBuilder();
                for (int day = random.nextInt(10); day < 20; day += random.nextInt(5)) {
                    written.append(' ').append(day).append(kinds.charAt(random.nextInt(kinds.length())));
                }
                history.asked(trace, written.toString());
            }
        }
        return history;
    }

    private static Instant at(int hours) {
        return History.START.plus(Duration.ofDays(20)).plus(Duration.ofHours(hours));
    }

    @Property(tries = 40)
    void itFadesTooIfItWasFluentAndIsForecastShakyFortyHoursFromNow(
            @ForAll long seed, @ForAll @IntRange(min = 0, max = 500) int hours) {
        Progress progress = random(seed).progress();
        Instant now = at(hours);
        long next = now.plus(Duration.ofHours(40)).toEpochMilli();
        long today = progress.localDay(now);
        for (Grid.Cell cell : Grid.of(progress, now).cells()) {
            List<Trace> traces = cell.family().traces();
            boolean due = traces.stream()
                    .anyMatch(t -> progress.mastery(t)
                            .dueDay()
                            .filter(day -> day <= today)
                            .isPresent());
            boolean shaky = traces.stream()
                    .filter(t -> progress.mastery(t).level().atLeast(Mastery.FLUENT))
                    .anyMatch(t -> progress.memory().chanceQuick(t.index(), next) < 0.85);
            assertEquals((due || shaky) && cell.level().atLeast(Mastery.ACCURATE), cell.fading(), cell::toString);
        }
    }

    @Property(tries = 40)
    void whatFadesNowFadesLaterTooUnlessItIsPractised(
            @ForAll long seed,
            @ForAll @IntRange(min = 0, max = 500) int hours,
            @ForAll @IntRange(min = 1, max = 500) int more) {
        Progress progress = random(seed).progress();
        Grid now = Grid.of(progress, at(hours));
        Grid later = Grid.of(progress, at(hours + more));
        for (Family family : Families.all()) {
            assertTrue(!now.cell(family).fading() || later.cell(family).fading(), family::toString);
        }
    }

    @Test
    void aLevelThatRoseOrFellIsToldInSteps() {
        Progress unmet = new History().progress();
        Progress before = all(FLUENT).progress();
        Grid fluent = grid(all(FLUENT), 1);
        assertEquals(3, fluent.change(SIX_SEVENS, unmet));
        assertEquals(0, fluent.change(SIX_SEVENS, before));
        assertEquals(-1, grid(all(FLUENT + " 2w"), 2).change(SIX_SEVENS, before));
        assertEquals(0, fluent.change(Family.of(6, 8), unmet));
        assertEquals(1, fluent.firmer(unmet));
        assertEquals(0, fluent.weaker(unmet));
        assertEquals(0, fluent.firmer(before));
        assertEquals(1, grid(all(FLUENT + " 2w"), 2).weaker(before));
    }

    @Property(tries = 20)
    void everyFamilyHasOneOfTheFiveLevels(@ForAll long seed) {
        Grid grid = grid(random(seed), 20);
        assertEquals(55, Stream.of(Mastery.values()).mapToLong(grid::count).sum());
    }

    @Test
    void theShakiestIsTheLowestOfLevelThenTheOneLeastOftenRightThenTheFirst() {
        History history = new History()
                .asked(Family.of(2, 3), "0v")
                .asked(Family.of(2, 9), "0w 0r 0w 0w 1r 1r 1r 1r")
                .asked(Family.of(8, 9), "0r 0r 0w")
                // Right oftener than the two that come later on the stairs, in fewer tries.
                .asked(Family.of(2, 8), "0r")
                .asked(Family.of(7, 9), "0r 0w")
                .asked(Family.of(7, 8), "0r 0w");
        List<ParentAction> held = new ArrayList<>();
        for (String next : List.of("7x8", "7x9", "8x9", "2x8", "2x9")) {
            Family family = Family.parse(next);
            Grid grid = grid(history, 1, held.toArray(ParentAction[]::new));
            assertEquals(Optional.of(family), grid.shakiest());
            held.add(new ParentAction.Hold(family));
        }
    }
}
