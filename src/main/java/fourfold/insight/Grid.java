package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a parent sees at a glance: one cell for each of the 55 families, in the order of the stairs.
 *
 * @param cells by {@link Family#index()}
 */
public record Grid(List<Cell> cells) {
    public Grid {
        cells = List.copyOf(cells);
    }

    /**
     * One family's cell.
     *
     * @param family the family
     * @param level the level of its weakest trace
     * @param products the level of its product
     * @param quotients the level of its weaker quotient
     * @param focused whether the parent's focus holds
     * @param held whether the parent has put it on hold
     * @param fading whether it was accurate or better, and is due again or forecast to be shaky by the next drill
     * @param right answers from memory that were right
     * @param asked answers from memory
     */
    public record Cell(
            Family family,
            Mastery level,
            Mastery products,
            Mastery quotients,
            boolean focused,
            boolean held,
            boolean fading,
            int right,
            int asked) {}

    /**
     * The grid now.
     *
     * @param progress with the child's memory
     */
    public static Grid of(Progress progress, Instant now) {
        return new Grid(Families.all().stream().map(f -> cell(progress, f, now)).toList());
    }

    private static Cell cell(Progress progress, Family family, Instant now) {
        Mastery quotients = family.traces().stream()
                .filter(t -> t.operation() == Operation.DIVIDE)
                .map(t -> progress.mastery(t).level())
                .reduce(Mastery.LASTING, Mastery::weaker);
        return new Cell(
                family,
                progress.level(family),
                progress.mastery(Trace.product(family)).level(),
                quotients,
                progress.isFocused(family),
                progress.isHeld(family),
                Fading.of(progress, family, now),
                family.traces().stream()
                        .mapToInt(t -> progress.mastery(t).right())
                        .sum(),
                family.traces().stream()
                        .mapToInt(t -> progress.mastery(t).asked())
                        .sum());
    }

    /** How many steps a family's level has risen since earlier: below 0 if it fell. */
    public int change(Family family, Progress earlier) {
        return cell(family).level().ordinal() - earlier.level(family).ordinal();
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
