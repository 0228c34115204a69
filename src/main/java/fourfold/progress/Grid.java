package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Trace;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
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
            int asked) {
        private Cell asFading() {
            return new Cell(family, level, products, quotients, focused, held, true, right, asked);
        }
    }

    /** A fact is fading if its chance of a quick right answer by the next drill is below this; our own choice. */
    private static final double TARGET = 0.85;

    /** How far away the next drill may be: a day off lies between two drills of most weeks. */
    private static final Duration NEXT_DRILL = Duration.ofHours(40);

    /** The grid now, with families that are forecast to fade by the next drill; needs the child's memory. */
    public static Grid of(Progress progress, Instant now) {
        Instant next = now.plus(NEXT_DRILL);
        Grid plain = of(progress, progress.localDay(now));
        return new Grid(plain.cells().stream()
                .map(c -> c.level().atLeast(Mastery.ACCURATE) && fades(progress, c.family(), next) ? c.asFading() : c)
                .toList());
    }

    private static boolean fades(Progress progress, Family family, Instant next) {
        long then = next.toEpochMilli();
        return family.traces().stream().anyMatch(t -> progress.memory().chanceQuick(t.index(), then) < TARGET);
    }

    /**
     * The grid on a local day.
     *
     * @param today days since 1 January 1970 where the child is
     */
    public static Grid of(Progress progress, long today) {
        return new Grid(
                Families.all().stream().map(f -> cell(progress, f, today)).toList());
    }

    private static Cell cell(Progress progress, Family family, long today) {
        Mastery level = progress.level(family);
        Mastery quotients = family.traces().stream()
                .filter(t -> t.operation() == Operation.DIVIDE)
                .map(t -> progress.standing(t).level())
                .reduce(Mastery.LASTING, Mastery::weaker);
        boolean due = family.traces().stream()
                .map(t -> progress.standing(t).dueDay())
                .flatMap(Optional::stream)
                .anyMatch(day -> day <= today);
        return new Cell(
                family,
                level,
                progress.standing(Trace.product(family)).level(),
                quotients,
                progress.isFocused(family),
                progress.isHeld(family),
                due && level.atLeast(Mastery.ACCURATE),
                family.traces().stream()
                        .mapToInt(t -> progress.standing(t).right())
                        .sum(),
                family.traces().stream()
                        .mapToInt(t -> progress.standing(t).asked())
                        .sum());
    }

    /** How many steps a family's level has risen since an earlier grid: below nought if it fell. */
    public int change(Family family, Grid earlier) {
        return cell(family).level().ordinal() - earlier.cell(family).level().ordinal();
    }

    /** The cell of a family. */
    public Cell cell(Family family) {
        return cells.get(family.index());
    }

    /** How many families have exactly this level. */
    public long count(Mastery level) {
        return cells.stream().filter(c -> c.level() == level).count();
    }

    /** All five levels with how many families have each, weakest first. */
    public List<Long> counts() {
        return Arrays.stream(Mastery.values()).map(this::count).toList();
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
