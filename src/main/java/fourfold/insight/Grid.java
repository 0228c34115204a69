// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a parent sees at a glance: one cell for each of the 55 families, in the order of the stairs.
 *
 * @param cells by {@link Family#index()}
 * @param begunAgain since when answers count of each family that the parent began again
 */
public record Grid(List<Cell> cells, Map<Family, Instant> begunAgain) {
    public Grid {
        cells = List.copyOf(cells);
        begunAgain = Map.copyOf(begunAgain);
    }

    /**
     * One family's cell.
     *
     * @param family the family
     * @param level its own level, see {@link Progress#level}
     * @param products the level of its product
     * @param quotients the level of its weaker quotient
     * @param marks what else is to be said of it
     * @param right answers from memory that were right
     * @param asked answers from memory
     */
    public record Cell(
            Family family, Mastery level, Mastery products, Mastery quotients, Set<Mark> marks, int right, int asked) {
        public Cell {
            marks = Set.copyOf(marks);
        }

        /** Whether the parent's focus holds. */
        public boolean focused() {
            return marks.contains(Mark.FOCUSED);
        }

        /** Whether the parent has put it on hold. */
        public boolean held() {
            return marks.contains(Mark.HELD);
        }

        /** Whether it was accurate or better, and is due again or forecast to be shaky by the next drill. */
        public boolean fading() {
            return marks.contains(Mark.FADING);
        }

        /** Whether it was right and quick untaught, and its level is still to be earned. */
        public boolean knownByTrial() {
            return marks.contains(Mark.KNOWN_BY_TRIAL);
        }

        /** The one sign that stands beside the level, or a blank: the parent's own doing first. */
        public char sign() {
            return focused() ? '*' : held() ? '-' : fading() ? '~' : knownByTrial() ? '+' : ' ';
        }
    }

    /** What is to be said of a family beside its level. */
    public enum Mark {
        /** The parent's focus holds. */
        FOCUSED,
        /** The parent has put it on hold. */
        HELD,
        /** It was known and is due or forecast to be shaky; see {@link Fading}. */
        FADING,
        /** All of it was right and quick though it was never taught here; see {@link Progress#isKnownByTrial}. */
        KNOWN_BY_TRIAL
    }

    /**
     * The grid now.
     *
     * @param progress with the child's memory
     */
    public static Grid of(Progress progress, Instant now) {
        return new Grid(
                Families.all().stream().map(f -> cell(progress, f, now)).toList(),
                progress.steering().resets());
    }

    static Cell cell(Progress progress, Family family, Instant now) {
        Mastery quotients = family.traces().stream()
                .filter(t -> t.operation() == Operation.DIVIDE)
                .map(t -> progress.mastery(t).level())
                .reduce(Mastery.LASTING, Mastery::weaker);
        return new Cell(
                family,
                progress.level(family),
                progress.mastery(Trace.product(family)).level(),
                quotients,
                marks(progress, family, now),
                family.traces().stream()
                        .mapToInt(t -> progress.mastery(t).right())
                        .sum(),
                family.traces().stream()
                        .mapToInt(t -> progress.mastery(t).asked())
                        .sum());
    }

    private static Set<Mark> marks(Progress progress, Family family, Instant now) {
        Set<Mark> marks = EnumSet.noneOf(Mark.class);
        if (progress.isFocused(family)) {
            marks.add(Mark.FOCUSED);
        }
        if (progress.isHeld(family)) {
            marks.add(Mark.HELD);
        }
        if (Fading.of(progress, family, now)) {
            marks.add(Mark.FADING);
        }
        if (progress.isKnownByTrial(family)) {
            marks.add(Mark.KNOWN_BY_TRIAL);
        }
        return marks;
    }

    /**
     * How many steps a family's level has risen since earlier: below 0 if it fell. What the parent has begun again, or taken
     * that back, since then is no change by the child: 0.
     */
    public int change(Family family, Progress earlier) {
        boolean byTheParent =
                !earlier.steering().begunAgain(family).equals(Optional.ofNullable(begunAgain.get(family)));
        return byTheParent
                ? 0
                : cell(family).level().ordinal() - earlier.level(family).ordinal();
    }

    /** How many families' levels have risen since earlier. */
    public long firmer(Progress earlier) {
        return cells.stream().filter(c -> change(c.family(), earlier) > 0).count();
    }

    /** How many families' levels have fallen since earlier. */
    public long weaker(Progress earlier) {
        return cells.stream().filter(c -> change(c.family(), earlier) < 0).count();
    }

    /** The cell of a family. */
    public Cell cell(Family family) {
        return cells.get(family.index());
    }

    /** How many families have exactly this level. */
    public long count(Mastery level) {
        return cells.stream().filter(c -> c.level() == level).count();
    }

    /** How many families are fluent or better. */
    public long fluent() {
        return cells.stream().filter(c -> c.level().atLeast(Mastery.FLUENT)).count();
    }

    /**
     * The family that is shakiest: among those met and not on hold, the lowest level first, then the smallest share of
     * right answers; empty if none was met.
     */
    public Optional<Family> shakiest() {
        return cells.stream()
                .filter(c -> c.level() != Mastery.NEW && !c.held() && c.asked() > 0)
                .min(Comparator.comparing(Cell::level)
                        .thenComparingDouble(c -> (double) c.right() / c.asked())
                        .thenComparing(Cell::family))
                .map(Cell::family);
    }
}
